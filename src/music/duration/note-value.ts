// Written note values: what a note looks like, and how long that is. Durations are fractions of a semibreve (whole
// note). Source: standard theory (shared reference table of rhythm; see checks/theory).

import { type Fraction, fraction, over, times } from '../fraction/fraction.ts';

/** Note shapes, longest first, by their MusicXML names. `quarter` is a crotchet, `eighth` a quaver. */
export const noteTypes = ['breve', 'whole', 'half', 'quarter', 'eighth', '16th', '32nd', '64th'] as const;
export type NoteType = (typeof noteTypes)[number];

/** A note shape with its dots, outside any tuplet. */
export interface NoteValue {
  readonly type: NoteType;
  readonly dots: 0 | 1 | 2;
}

/** `actual` notes in the time of `normal`: a triplet is 3 and 2. */
export interface TupletRatio {
  readonly actual: number;
  readonly normal: number;
}

const typesByDenominator = new Map<number, NoteType>(noteTypes.slice(1).map((type, i) => [2 ** i, type]));

/** The length of a shape without dots. `typeDuration('quarter')` → 1/4 */
export function typeDuration(type: NoteType): Fraction {
  const index = noteTypes.indexOf(type);
  return index === 0 ? fraction(2) : fraction(1, 2 ** (index - 1));
}

/** The length of a written value. Dotted crotchet → 3/8; `tuplet` shortens it: quaver of a triplet → 1/12 */
export function valueDuration(value: NoteValue, tuplet: TupletRatio | null = null): Fraction {
  const plain = times(typeDuration(value.type), fraction(2 ** (value.dots + 1) - 1, 2 ** value.dots));
  return tuplet === null ? plain : times(plain, fraction(tuplet.normal, tuplet.actual));
}

/** The one written value of a duration, or null where it takes tied notes. 3/8 → dotted crotchet; 5/8 → null */
export function durationToValue(duration: Fraction, tuplet: TupletRatio | null = null): NoteValue | null {
  const { n, d } = tuplet === null ? duration : over(duration, fraction(tuplet.normal, tuplet.actual));
  for (const dots of [0, 1, 2] as const) {
    const share = 2 ** (dots + 1) - 1;
    if (n % share !== 0) continue;
    const plain = fraction((n / share) * 2 ** dots, d);
    if (plain.n === 2 && plain.d === 1) return { type: 'breve', dots };
    const type = plain.n === 1 ? typesByDenominator.get(plain.d) : undefined;
    if (type !== undefined) return { type, dots };
  }
  return null;
}
