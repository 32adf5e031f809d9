// One instrument of those Levare knows, by family.

import { findInstrument, type InstrumentId, listInstruments } from '#music';
import { words } from '../words/index.ts';
import { SelectField } from './field.tsx';

export interface InstrumentSelectProps {
  readonly label: string;
  readonly value: InstrumentId | '';
  readonly onValue: (value: InstrumentId | '') => void;
  readonly fault?: string | null;
  /** What it means to choose none; absent where one has to be chosen. */
  readonly none?: string;
}

const instruments = listInstruments().map((i) => ({
  value: i.id,
  label: i.name,
  group: words.families[i.family],
}));

export function InstrumentSelect({
  label,
  value,
  onValue,
  fault = null,
  none = words.frame.choose,
}: InstrumentSelectProps) {
  return (
    <SelectField<InstrumentId | ''>
      label={label}
      value={value}
      fault={fault}
      options={[{ value: '', label: none }, ...instruments]}
      onValue={(chosen) => onValue(findInstrument(chosen)?.id ?? '')}
    />
  );
}
