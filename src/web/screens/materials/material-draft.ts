// A material as it is being shaped: kind, fields as they stand, and for whom. It lives in the address, so that a reload, a
// link or the way back finds the same sheet.

import {
  findInstrument,
  type InstrumentId,
  type MaterialKind,
  materialKinds,
  type Stage,
  stages,
} from '#music';

export interface MaterialDraft {
  readonly kind: MaterialKind;
  /** Only what differs from the defaults. */
  readonly fields: Readonly<Record<string, unknown>>;
  /** A student's course of playing: `student:… alto_sax`; null for any player. */
  readonly player: string | null;
  readonly instrument: InstrumentId;
  readonly stage: Stage;
  /** In years; null where it shapes nothing. */
  readonly age: number | null;
  readonly seed: number;
}

export const newDraft: MaterialDraft = {
  kind: 'scale',
  fields: {},
  player: null,
  instrument: 'piano',
  stage: 'elementary',
  age: null,
  seed: 1,
};

/** A chart to begin from where a kind cannot be without one (our own). */
const firstChart = '| Dm7 | G7 | Cmaj7 | % |';

/** The spec as it would be kept, still to be read by `parseMaterialSpec`. */
export function draftToSpec({ kind, fields }: MaterialDraft): Readonly<Record<string, unknown>> {
  const begin = kind === 'line' || kind === 'chart' ? { chart: firstChart } : {};
  return { kind, ...begin, ...fields };
}

/** The draft as the query of an address. */
export function draftToQuery(draft: MaterialDraft): string {
  const query = new URLSearchParams({ spec: JSON.stringify({ kind: draft.kind, ...draft.fields }) });
  if (draft.player !== null) query.set('player', draft.player);
  query.set('instrument', draft.instrument);
  query.set('stage', draft.stage);
  if (draft.age !== null) query.set('age', String(draft.age));
  query.set('seed', String(draft.seed));
  return query.toString();
}

/** The draft of an address; whatever it does not say, or says wrongly, is as in a new one. */
export function queryToDraft(text: string): MaterialDraft {
  const query = new URLSearchParams(text);
  const spec = readSpec(query.get('spec'));
  const age = Number(query.get('age') ?? Number.NaN);
  const seed = Number(query.get('seed') ?? Number.NaN);
  return {
    ...spec,
    player: query.get('player'),
    instrument: findInstrument(query.get('instrument') ?? '')?.id ?? newDraft.instrument,
    stage: stages.find((stage) => stage === query.get('stage')) ?? newDraft.stage,
    age: Number.isInteger(age) && age >= 3 && age <= 99 ? age : null,
    seed: Number.isInteger(seed) && seed >= 0 && seed < 2 ** 31 ? seed : newDraft.seed,
  };
}

function readSpec(text: string | null): Pick<MaterialDraft, 'kind' | 'fields'> {
  try {
    const value: unknown = JSON.parse(text ?? '');
    if (typeof value !== 'object' || value === null) return newDraft;
    const { kind: named, ...fields } = { kind: undefined, ...value };
    const kind = materialKinds.find((k) => k === named);
    return kind === undefined ? newDraft : { kind, fields };
  } catch {
    return newDraft;
  }
}
