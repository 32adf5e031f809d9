// One instrument of those Levare knows, by family.

import { findInstrument, type InstrumentId, listInstruments } from '#music';
import { words } from '../words/index.ts';
import { SelectField } from './field.tsx';

export interface InstrumentSelectProps {
  readonly label: string;
  readonly value: InstrumentId | '';
  readonly onValue: (value: InstrumentId | '') => void;
  readonly fault?: string | null;
}

const options = [
  { value: '' as const, label: words.frame.choose },
  ...listInstruments().map((i) => ({ value: i.id, label: i.name, group: words.families[i.family] })),
];

export function InstrumentSelect({ label, value, onValue, fault = null }: InstrumentSelectProps) {
  return (
    <SelectField<InstrumentId | ''>
      label={label}
      value={value}
      fault={fault}
      options={options}
      onValue={(chosen) => onValue(findInstrument(chosen)?.id ?? '')}
    />
  );
}
