// Where the band plays a spec: `/band?spec=…&seed=…&for=trumpet_bb&typed=written`.

import { isFields } from '#core';
import { findInstrument, type InstrumentId } from '#music';

/** A chart to begin with, our own. */
export const newBacking: Readonly<Record<string, unknown>> = {
  kind: 'backing',
  chart: '| Dm7 | G7 | Cmaj7 | A7 |',
};

export interface BackingAddress {
  readonly fields: Readonly<Record<string, unknown>>;
  readonly seed: number;
  /** Who reads the chart; null reads what sounds. */
  readonly reader: InstrumentId | null;
  /** Whether the chart is typed as the reader reads it. */
  readonly isWritten: boolean;
}

/** The address that plays a spec; `kind` may be left out. */
export function backingAddress(
  spec: Readonly<Record<string, unknown>>,
  seed: number,
  { reader = null, isWritten = false }: Partial<Pick<BackingAddress, 'reader' | 'isWritten'>> = {},
): string {
  const query = new URLSearchParams({ spec: JSON.stringify(spec), seed: String(seed) });
  if (reader !== null) query.set('for', reader);
  if (isWritten) query.set('typed', 'written');
  return `/band?${query}`;
}

/** What an address says; nothing where it says nothing that can be read. */
export function readBackingAddress(text: string): BackingAddress {
  const query = new URLSearchParams(text);
  const seed = Number(query.get('seed') ?? Number.NaN);
  return {
    fields: readFields(query.get('spec')),
    seed: Number.isInteger(seed) && seed >= 0 && seed < 2 ** 31 ? seed : 1,
    reader: findInstrument(query.get('for') ?? '')?.id ?? null,
    isWritten: query.get('typed') === 'written',
  };
}

function readFields(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(text ?? '');
    return isFields(value) ? value : {};
  } catch {
    return {};
  }
}
