import { TextField } from '../../components/field.tsx';
import { words } from '../../words/index.ts';
import type { MinutesDraft } from './unit-draft.ts';

const says = words.units.editor;

export interface MinutesFieldsProps {
  readonly minutes: MinutesDraft;
  readonly onMinutes: (minutes: MinutesDraft) => void;
  readonly fault: string | null;
  readonly help?: string;
}

/** The three minutes of an activity; a fault of their order is said under all three. */
export function MinutesFields({ minutes, onMinutes, fault, help }: MinutesFieldsProps) {
  return (
    <fieldset className="editor-minutes">
      <legend className="field-label">{says.minutes}</legend>
      <div className="editor-three">
        {(['shortest', 'usual', 'longest'] as const).map((which) => (
          <TextField
            key={which}
            label={says[which]}
            type="number"
            min={1}
            max={120}
            value={minutes[which]}
            onValue={(value) => onMinutes({ ...minutes, [which]: value })}
          />
        ))}
      </div>
      {help && <p className="field-help">{help}</p>}
      {fault && (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
    </fieldset>
  );
}
