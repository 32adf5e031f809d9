// Where the band plays a spec: `/band?spec=…&seed=…`.

/** A chart to begin with, our own. */
export const newBacking: Readonly<Record<string, unknown>> = {
  kind: 'backing',
  chart: '| Dm7 | G7 | Cmaj7 | A7 |',
};

/** The address that plays a spec; `kind` may be left out. */
export function backingAddress(spec: Readonly<Record<string, unknown>>, seed: number): string {
  return `/band?${new URLSearchParams({ spec: JSON.stringify(spec), seed: String(seed) })}`;
}

/** What an address says; nothing where it says nothing that can be read. */
export function readBackingAddress(text: string): {
  readonly fields: Readonly<Record<string, unknown>>;
  readonly seed: number;
} {
  const query = new URLSearchParams(text);
  const seed = Number(query.get('seed') ?? Number.NaN);
  return {
    fields: readFields(query.get('spec')),
    seed: Number.isInteger(seed) && seed >= 0 && seed < 2 ** 31 ? seed : 1,
  };
}

function readFields(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(text ?? '');
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? { ...value } : {};
  } catch {
    return {};
  }
}
