// Note values: how long the notes are written, how varied they are, and how long one value goes on.

import { type Fraction, fraction } from '#music';
import { doubtfulNotes, type EvidenceInput, notePassage } from './evidence-input.ts';
import { couldNotHear, figure, type Row } from './figure.ts';

export interface ValueShare {
  /** British name: quaver, dotted crotchet, triplet quaver; `tied` where no one note shows it. */
  readonly name: string;
  /** In semibreves. */
  readonly length: Fraction;
  readonly count: number;
  readonly share: number;
  readonly timeShare: number;
}

export type NoteValueFigure = 'kinds' | 'entropy' | 'longestRun' | 'mostUsedShare';
export type NoteValuesRow = Row<NoteValueFigure, { readonly values: readonly ValueShare[] }>;

const names: readonly (readonly [string, number, number])[] = [
  ['semibreve', 1, 1],
  ['dotted minim', 3, 4],
  ['minim', 1, 2],
  ['dotted crotchet', 3, 8],
  ['crotchet', 1, 4],
  ['dotted quaver', 3, 16],
  ['quaver', 1, 8],
  ['dotted semiquaver', 3, 32],
  ['semiquaver', 1, 16],
  ['demisemiquaver', 1, 32],
  ['triplet minim', 1, 3],
  ['triplet crotchet', 1, 6],
  ['triplet quaver', 1, 12],
  ['triplet semiquaver', 1, 24],
];

/** The name of a length in semibreves. 3/8 → dotted crotchet; 5/8 → tied */
export function nameValue(length: Fraction): string {
  return names.find(([, n, d]) => n === length.n && d === length.d)?.[0] ?? 'tied';
}

/** Counts note values. */
export function hearNoteValues(input: EvidenceInput): NoteValuesRow {
  const { alignment } = input;
  if (alignment === null) return couldNotHear('Note values need the beat, and it could not be found.');
  const { rhythm } = alignment;
  if (rhythm.length < 4) return couldNotHear('Fewer than four notes were heard.');
  const counts = new Map<string, { length: Fraction; count: number; time: number }>();
  let time = 0;
  let run = { from: 0, length: 0 };
  let since = 0;
  for (const [i, note] of rhythm.entries()) {
    const name = nameValue(note.length);
    const known = counts.get(name) ?? { length: note.length, count: 0, time: 0 };
    counts.set(name, { ...known, count: known.count + 1, time: known.time + note.ticks });
    time += note.ticks;
    if (i > 0 && nameValue(rhythm[i - 1]?.length ?? fraction(0)) !== name) since = i;
    if (i - since + 1 > run.length) run = { from: since, length: i - since + 1 };
  }
  const values = [...counts]
    .map(
      ([name, c]): ValueShare => ({
        name,
        length: c.length,
        count: c.count,
        share: c.count / rhythm.length,
        timeShare: c.time / time,
      }),
    )
    .sort((a, b) => b.count - a.count);
  const doubtful = doubtfulNotes(alignment);
  const entropy = entropyOf(values.map((v) => v.share));
  const runValue = nameValue(rhythm[run.from]?.length ?? fraction(0));
  const single = values.filter((v) => v.count === 1).length;
  return {
    heard: true,
    figures: {
      kinds: figure(
        values.length,
        Math.min(values.length - 1, Math.max(single, doubtful > 1 ? 1 : 0)),
        'count',
      ),
      entropy: figure(entropy, entropyUncertainty(values, rhythm.length, doubtful), 'bits'),
      longestRun: figure(run.length, Math.min(run.length - 1, Math.ceil(doubtful / 2)), 'count'),
      mostUsedShare: figure(values[0]?.share ?? 0, Math.max(0.5, doubtful) / rhythm.length, 'share'),
    },
    details: { values },
    passages: [
      notePassage(input, run.from, run.from + run.length - 1, `${run.length} ${runValue}s one after another`),
      ...values.slice(1, 4).flatMap((value) => {
        const at = rhythm.findIndex((note) => nameValue(note.length) === value.name);
        return at < 0 ? [] : [notePassage(input, at, at, `a ${value.name}`)];
      }),
    ],
  };
}

/** Shannon's entropy in bits (Shannon 1948). Four values alike → 2 */
export function entropyOf(shares: readonly number[]): number {
  return shares.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0);
}

/** What moving the doubtful notes (more than one at least) from the commonest value to another would change. */
function entropyUncertainty(values: readonly ValueShare[], total: number, doubtful: number): number {
  const moved = Math.max(1.5, doubtful) / total;
  const shares = values.map((v) => v.share);
  const changed = [Math.max(0, (shares[0] ?? 0) - moved), ...shares.slice(1), moved];
  return Math.abs(entropyOf(changed) - entropyOf(shares));
}
