// Time zone and locale, each as a select over what this browser knows.

import type { PlainDate } from '#core';
import { formatDay } from '../app/format.ts';
import { listLocales, listTimeZones } from '../app/regions.ts';
import { words } from '../words/index.ts';
import { SelectField } from './field.tsx';

const example = '2026-03-09' as PlainDate;

export interface RegionFieldProps {
  readonly help?: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
}

export function TimeZoneField({
  value,
  onValue,
  help = words.settings.region.timeZoneHelp,
}: RegionFieldProps) {
  const zones = listTimeZones();
  const all = zones.includes(value) ? zones : [value, ...zones];
  return (
    <SelectField
      label={words.welcome.found.timeZone}
      help={help}
      value={value}
      onValue={onValue}
      options={all.map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') }))}
    />
  );
}

export function LocaleField({ value, onValue }: RegionFieldProps) {
  return (
    <SelectField
      label={words.welcome.found.locale}
      help={words.settings.region.localeExample(formatDay(example, value, 'full'))}
      value={value}
      onValue={onValue}
      options={listLocales([value])}
    />
  );
}
