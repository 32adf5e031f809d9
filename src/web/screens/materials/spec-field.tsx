// One field of a spec, by the control its schema asks for.

import { memo, useState } from 'react';
import type { MaterialKind } from '#music';
import { findChordQuality, findScale } from '#music';
import { SelectField, TextField } from '../../components/field.tsx';
import { Tick } from '../../components/tick.tsx';
import { useStudio } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { materialChoices, materialFields, noteValueNames } from '../../words/materials.ts';
import { fieldControl } from './field-control.ts';

const says = words.materials;

export interface SpecFieldProps {
  readonly kind: MaterialKind;
  readonly name: string;
  /** As it stands in the draft, or the default. */
  readonly value: unknown;
  readonly fault: string | null;
  readonly onValue: (name: string, value: unknown) => void;
}

const helpByField: Readonly<Record<string, string>> = {
  chart: says.chartHelp,
  melody: says.melodyHelp,
  play: says.listHelp,
  tempo: says.tempoHelp,
};

/** Drawn anew only when it changes itself: a form of twenty fields would keep the sheet waiting. */
export const SpecField = memo(function SpecField({
  kind,
  name,
  value,
  fault,
  onValue: tell,
}: SpecFieldProps) {
  const onValue = (next: unknown) => tell(name, next);
  const sayChoice = useChoiceWords(name);
  const control = fieldControl(kind, name);
  const label = materialFields[name] ?? name;
  const help = helpByField[name];
  const common = { label, fault, ...(help === undefined ? {} : { help }) };
  switch (control.kind) {
    case 'tick':
      return (
        <Tick ticked={value === true} onTick={onValue}>
          {label}
        </Tick>
      );
    case 'choice':
      return (
        <SelectField
          {...common}
          value={String(value)}
          options={control.values.map((choice) => ({
            value: String(choice),
            label: sayChoice(String(choice)),
          }))}
          onValue={(chosen) => onValue(control.values.find((choice) => String(choice) === chosen))}
        />
      );
    case 'several':
      return <Several {...common} values={control.values} value={value} say={sayChoice} onValue={onValue} />;
    case 'number':
      return (
        <TextField
          {...common}
          type="number"
          min={control.low}
          max={control.high}
          value={value === 'fit' ? '' : String(value)}
          onValue={(text) => onValue(text === '' ? 'fit' : Number(text))}
        />
      );
    case 'list':
      return <ListField {...common} value={value} onValue={onValue} />;
    case 'text':
      return (
        <TextField {...common} value={textOf(value)} onValue={(text) => onValue(text === '' ? null : text)} />
      );
    case 'lines':
      return (
        <TextField
          {...common}
          rows={name === 'chart' && kind !== 'phrase' ? 4 : 2}
          value={textOf(value)}
          onValue={(text) => onValue(text === '' && (kind === 'phrase' || name === 'melody') ? null : text)}
        />
      );
  }
});

const textOf = (value: unknown): string => (typeof value === 'string' ? value : '');

/** What a choice is called; names of scales and chords come from the music module. */
function useChoiceWords(name: string): (choice: string) => string {
  const noteNames = useStudio().data?.noteNames ?? 'british';
  return (choice) => {
    if (choice === 'fit') return says.fit;
    if (name === 'scale') return findScale(choice)?.names[0] ?? choice;
    if (name === 'quality') return qualityWord(choice);
    if (name === 'start' || name === 'key') {
      const said = materialChoices['key']?.[choice];
      return said ?? choice.replace('b', '♭').replace('#', '♯');
    }
    const value = Object.entries(noteValueNames[noteNames]).find(([id]) => id === choice);
    return value?.[1] ?? materialChoices[name]?.[choice] ?? choice;
  };
}

/** `minor_7` → `minor 7 (m7)` */
function qualityWord(id: string): string {
  const suffix = findChordQuality(id)?.suffix ?? '';
  const word = id.replaceAll('_', ' ');
  return suffix === '' ? word : `${word} (${suffix})`;
}

interface SeveralProps {
  readonly label: string;
  readonly fault: string | null;
  readonly values: readonly string[];
  readonly value: unknown;
  readonly say: (choice: string) => string;
  readonly onValue: (value: unknown) => void;
}

function Several({ label, fault, values, value, say, onValue }: SeveralProps) {
  const chosen = Array.isArray(value) ? value.map(String) : [];
  const turn = (one: string, ticked: boolean) => {
    const next = values.filter((other) => (other === one ? ticked : chosen.includes(other)));
    onValue(next.length === 0 ? 'fit' : next);
  };
  return (
    <fieldset className="materials-several">
      <legend className="field-label">{label}</legend>
      {values.map((one) => (
        <Tick key={one} ticked={chosen.includes(one)} onTick={(ticked) => turn(one, ticked)}>
          {say(one)}
        </Tick>
      ))}
      <span className="field-help">{says.valuesHelp}</span>
      {fault && <span className="field-fault">{fault}</span>}
    </fieldset>
  );
}

interface ListFieldProps {
  readonly label: string;
  readonly help?: string;
  readonly fault: string | null;
  readonly value: unknown;
  readonly onValue: (value: unknown) => void;
}

/** The text is kept as typed; the numbers in it are the value. */
function ListField({ value, onValue, ...common }: ListFieldProps) {
  const said = Array.isArray(value) ? value.join(' ') : '';
  const [typed, setTyped] = useState(said);
  const [from, setFrom] = useState(said);
  const shown = from === said ? typed : said;
  return (
    <TextField
      {...common}
      value={shown}
      onValue={(text) => {
        const numbers = text
          .split(/[\s,]+/)
          .filter(Boolean)
          .map(Number);
        setTyped(text);
        setFrom(numbers.join(' '));
        onValue(numbers);
      }}
    />
  );
}
