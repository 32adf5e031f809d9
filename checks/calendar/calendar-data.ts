// The collected table of calendars; see README.md.

import { readFileSync } from 'node:fs';

interface Data {
  readonly icalendar: {
    readonly examples: readonly {
      readonly name: string;
      readonly tzid: string;
      readonly dtstart: string;
      readonly rrule: string;
      readonly exdate: string | null;
      readonly expected_dates: readonly string[];
      readonly complete: boolean;
    }[];
    readonly daylight_saving: {
      readonly rfc: readonly { readonly local: string; readonly utc: string }[];
      readonly more_computed: readonly {
        readonly zone: string;
        readonly local: string;
        readonly utc: string;
      }[];
    };
  };
  readonly iso_8601_weeks: { readonly rows: Readonly<Record<string, string>> };
}

export const data: Data = JSON.parse(readFileSync(new URL('./data/calendar.json', import.meta.url), 'utf8'));
