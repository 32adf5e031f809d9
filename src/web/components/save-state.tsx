// Where this window's writing is: saved, on its way, or kept here until the server is back.

import { useOutbox } from '../hooks/use-outbox.ts';
import { words } from '../words/index.ts';
import './save-state.css';

export function SaveState() {
  const { state, pending, durable } = useOutbox();
  const text = {
    saved: words.frame.saved,
    saving: words.frame.saving,
    waiting: words.frame.waiting(pending),
  };
  return (
    <p className={`save-state save-state-${state}`} role="status">
      <span className="save-mark" aria-hidden="true" />
      <span>{text[state]}</span>
      {!durable && pending > 0 && <span className="fault"> {words.frame.notKept}</span>}
    </p>
  );
}
