// Whom a unit or a variant suits: stages, ages.

import { type Stage, stages } from '#planning';
import { TextField } from '../../components/field.tsx';
import { Tick } from '../../components/tick.tsx';
import { words } from '../../words/index.ts';

const says = words.units.editor;

export interface StageTicksProps {
  readonly chosen: readonly Stage[];
  readonly onChosen: (chosen: readonly Stage[]) => void;
  readonly fault: string | null;
}

export function StageTicks({ chosen, onChosen, fault }: StageTicksProps) {
  return (
    <fieldset className="field" aria-invalid={fault ? true : undefined}>
      <legend className="field-label">{says.stages}</legend>
      <div className="editor-ticks">
        {stages.map((stage) => (
          <Tick
            key={stage}
            ticked={chosen.includes(stage)}
            onTick={(ticked) =>
              onChosen(stages.filter((one) => (one === stage ? ticked : chosen.includes(one))))
            }
          >
            {words.stageNames[stage]}
          </Tick>
        ))}
      </div>
      {fault && (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
    </fieldset>
  );
}

export interface AgeFieldsProps {
  readonly from: string;
  readonly to: string;
  readonly onAges: (ages: { readonly ageFrom: string; readonly ageTo: string }) => void;
  readonly fault: string | null;
}

export function AgeFields({ from, to, onAges, fault }: AgeFieldsProps) {
  return (
    <div className="editor-ages">
      <div className="editor-two">
        <TextField
          label={says.ageFrom}
          type="number"
          min={3}
          max={99}
          value={from}
          onValue={(ageFrom) => onAges({ ageFrom, ageTo: to })}
        />
        <TextField
          label={says.ageTo}
          type="number"
          min={3}
          max={99}
          value={to}
          onValue={(ageTo) => onAges({ ageFrom: from, ageTo })}
        />
      </div>
      {fault && (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}
