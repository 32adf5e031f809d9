// For whom a sheet is made: one of the studio's students, or any player by instrument, stage and age.

import { memo } from 'react';
import type { StudentsView } from '#contract';
import { SelectField, TextField } from '../../components/field.tsx';
import { InstrumentSelect } from '../../components/instrument-select.tsx';
import { StageSelect } from '../../components/stage-select.tsx';
import { words } from '../../words/index.ts';
import type { MaterialDraft } from './material-draft.ts';

const says = words.materials;

export interface ForWhomProps {
  readonly player: MaterialDraft['player'];
  readonly instrument: MaterialDraft['instrument'];
  readonly stage: MaterialDraft['stage'];
  readonly age: MaterialDraft['age'];
  readonly students: StudentsView | undefined;
  readonly onChange: (change: Partial<MaterialDraft>) => void;
}

interface Player extends Pick<MaterialDraft, 'instrument' | 'stage' | 'age'> {
  readonly value: string;
  readonly label: string;
}

/** Everyone who is taught, once for each instrument, by name. */
function listPlayers(students: StudentsView | undefined): readonly Player[] {
  return (students?.students ?? [])
    .filter((student) => student.here)
    .flatMap((student) =>
      student.instruments.map(({ instrument, name, stage }) => ({
        value: `${student.id} ${instrument}`,
        label: says.playerOf(student.name, name),
        instrument,
        stage,
        age: student.age,
      })),
    );
}

/** Drawn anew only when its own answers change. */
export const ForWhom = memo(function ForWhom(props: ForWhomProps) {
  const { instrument, stage, age, students, onChange } = props;
  const players = listPlayers(students);
  const player = players.find(({ value }) => value === props.player);
  return (
    <div className="form-row">
      <SelectField
        label={says.player}
        value={player?.value ?? ''}
        options={[
          { value: '', label: says.anyPlayer },
          ...players.map(({ value, label }) => ({ value, label, group: says.yourStudents })),
        ]}
        onValue={(chosen) => {
          const found = players.find(({ value }) => value === chosen);
          if (found === undefined) onChange({ player: null });
          else
            onChange({
              player: found.value,
              instrument: found.instrument,
              stage: found.stage,
              age: found.age,
            });
        }}
      />
      {player === undefined && (
        <>
          <InstrumentSelect
            label={says.instrument}
            value={instrument}
            onValue={(instrument) => {
              if (instrument !== '') onChange({ instrument });
            }}
          />
          <StageSelect label={says.stage} value={stage} onValue={(stage) => onChange({ stage })} />
          <AgeField age={age} onAge={(age) => onChange({ age })} />
        </>
      )}
    </div>
  );
});

function AgeField({
  age,
  onAge,
}: {
  readonly age: number | null;
  readonly onAge: (age: number | null) => void;
}) {
  return (
    <TextField
      label={says.age}
      type="number"
      min={3}
      max={99}
      unit={says.years}
      value={age === null ? '' : String(age)}
      onValue={(text) => {
        const typed = Number(text);
        onAge(text !== '' && Number.isInteger(typed) && typed >= 1 && typed <= 99 ? typed : null);
      }}
    />
  );
}
