// Where a material can be looked at: the Materials screen, with its spec.

import type { InstrumentId, Stage } from '#music';
import { draftToQuery, queryToDraft } from './material-draft.ts';

export interface MaterialFor {
  readonly instrument: InstrumentId;
  readonly stage: Stage;
  readonly age: number | null;
  readonly seed: number;
}

/** The address of a spec on the Materials screen; for any player where nobody is named. */
export function materialAddress(spec: unknown, whom: Partial<MaterialFor> = {}): string {
  const { kind, ...fields } = queryToDraft(new URLSearchParams({ spec: JSON.stringify(spec) }).toString());
  return `/materials?${draftToQuery({ kind, ...fields, ...whom })}`;
}
