// Where a material can be looked at, or played along with: the Materials screen or the band, with its spec.

import type { InstrumentId, Stage } from '#music';
import { backingAddress } from '../backing/backing-address.ts';
import { draftToQuery, queryToDraft } from './material-draft.ts';

export interface MaterialFor {
  readonly instrument: InstrumentId;
  readonly stage: Stage;
  readonly age: number | null;
  readonly seed: number;
}

/** The address of a spec on the Materials screen, of a backing at the band; for any player where nobody is named. */
export function materialAddress(spec: unknown, whom: Partial<MaterialFor> = {}): string {
  if (isBacking(spec)) return backingAddress(spec, whom.seed ?? 1, { reader: whom.instrument ?? null });
  const { kind, ...fields } = queryToDraft(new URLSearchParams({ spec: JSON.stringify(spec) }).toString());
  return `/materials?${draftToQuery({ kind, ...fields, ...whom })}`;
}

const isBacking = (spec: unknown): spec is Readonly<Record<string, unknown>> =>
  typeof spec === 'object' && spec !== null && 'kind' in spec && spec.kind === 'backing';
