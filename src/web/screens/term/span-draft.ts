// A term or holiday half filled in.

import { isDate } from '#core';
import { words } from '../../words/index.ts';

export interface SpanDraft {
  readonly name: string;
  readonly starts: string;
  readonly ends: string;
  /** A single day may leave its last day open. */
  readonly endsOptional: boolean;
}

export type SpanFaults = Readonly<Partial<Record<'name' | 'starts' | 'ends', string>>>;

const says = words.term.terms;

/** What is wrong, field by field; `{}` when it can be sent. */
export function findSpanFaults(draft: SpanDraft): SpanFaults {
  const endsOpen = draft.ends === '' && draft.endsOptional;
  return {
    ...(draft.name.trim() === '' ? { name: says.nameMissing } : {}),
    ...(isDate(draft.starts) ? {} : { starts: says.dayMissing }),
    ...(endsOpen || isDate(draft.ends) ? {} : { ends: says.dayMissing }),
    ...(isDate(draft.starts) && isDate(draft.ends) && draft.ends < draft.starts
      ? { ends: says.endsEarly }
      : {}),
  };
}
