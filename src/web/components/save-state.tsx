// Where this window's writing is: saved, on its way, or kept here until the server is back.

import { useHeard } from '../hooks/use-heard.ts';
import { useOutbox } from '../hooks/use-outbox.ts';
import { RefusedTakes } from '../takes/refused-takes.tsx';
import { words } from '../words/index.ts';
import './save-state.css';

export function SaveState() {
  const { state, pending, durable } = useOutbox();
  const text = {
    saved: words.frame.saved,
    saving: words.frame.saving,
    waiting: words.frame.waiting(pending),
  };
  const notKept = !durable && pending > 0 ? words.frame.notKept : '';
  // Writing goes through many savings: only where they end is worth a word.
  const heard = useHeard(state === 'saving' ? null : state, `${text[state]}. ${notKept}`.trim());
  return (
    <>
      <p className={`save-state save-state-${state}`}>
        <span className="save-mark" aria-hidden="true" />
        <span>{text[state]}</span>
        {notKept && <span className="fault"> {notKept}</span>}
      </p>
      <span className="only-heard" role="status">
        {heard}
      </span>
      <RefusedTakes />
    </>
  );
}
