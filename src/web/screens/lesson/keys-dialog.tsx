import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { words } from '../../words/index.ts';
import './keys-dialog.css';

export interface KeysDialogProps {
  readonly open: boolean;
  readonly single: boolean;
  readonly onSingle: (on: boolean) => void;
  readonly onClose: () => void;
}

/** The keys of teaching mode, and the switch for single ones. */
export function KeysDialog({ open, single, onSingle, onClose }: KeysDialogProps) {
  return (
    <Dialog title={words.lesson.keysTitle} open={open} onClose={onClose}>
      <dl className="keys">
        {words.lesson.keyList.map(([key, does]) => (
          <div key={key}>
            <dt>{key}</dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <p className="soft">
        {words.lesson.keysPedal} {words.lesson.escapeText}
      </p>
      <label className="keys-single">
        <input type="checkbox" checked={single} onChange={(event) => onSingle(event.target.checked)} />
        <span>
          <strong>{words.lesson.keysSingle}</strong>{' '}
          <span className="soft">{words.lesson.keysSingleHelp}</span>
        </span>
      </label>
      <Button large onPress={onClose}>
        {words.lesson.keysClose}
      </Button>
    </Dialog>
  );
}
