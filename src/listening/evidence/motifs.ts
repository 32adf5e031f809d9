// Motifs: short cells of pitch steps and rhythm that come back, at the same pitch or moved, in the same place of the bar or
// shifted.

import { ticksPerBeat } from '../alignment/slots.ts';
import { beatFrame } from '../context/take-context.ts';
import { doubtfulNotes, type EvidenceInput, notePassage } from './evidence-input.ts';
import { couldNotHear, figure, type Row } from './figure.ts';

export interface MotifPlace {
  readonly first: number;
  readonly last: number;
  /** From the first note of the motif's first appearance; 0 at the same pitch. */
  readonly semitones: number;
  /** Whether it stands elsewhere in the bar than at first. */
  readonly isShifted: boolean;
}

export interface Motif {
  /** Notes in the cell. */
  readonly notes: number;
  readonly places: readonly MotifPlace[];
}

export type MotifFigure = 'motifs' | 'coveredShare' | 'longest';
export type MotifsRow = Row<MotifFigure, { readonly motifs: readonly Motif[] }>;

const shortest = 3;
const longest = 8;
const told = 6;

/** Finds cells of three to eight notes that come back without overlapping. */
export function hearMotifs(input: EvidenceInput): MotifsRow {
  const { alignment, notes } = input;
  if (alignment === null) return couldNotHear('Motifs need the beat, and it could not be found.');
  if (notes.length < 8) return couldNotHear('Fewer than eight notes were heard.');
  const isCovered = new Array<boolean>(notes.length).fill(false);
  const motifs: Motif[] = [];
  for (let size = longest; size >= shortest && motifs.length < told; size--)
    for (const places of repeatsOf(input, size)) {
      const fresh = places.filter((p) => !isCovered[p.first] && !isCovered[p.last]);
      if (fresh.length < 2 || motifs.length >= told) continue;
      for (const place of fresh) isCovered.fill(true, place.first, place.last + 1);
      motifs.push({ notes: size, places: fresh });
    }
  const covered = isCovered.filter(Boolean).length;
  const doubtful = doubtfulNotes(alignment);
  return {
    heard: true,
    figures: {
      motifs: figure(
        motifs.length,
        Math.min(2, Math.max(doubtful / 4, motifs.length >= told ? 1 : 0)),
        'count',
      ),
      coveredShare: figure(covered / notes.length, Math.max(1, doubtful) / notes.length, 'share'),
      ...(motifs.length === 0
        ? {}
        : { longest: figure(Math.max(...motifs.map((m) => m.notes)), doubtful > 0 ? 1 : 0, 'count') }),
    },
    details: { motifs },
    passages: motifs.flatMap((motif, m) =>
      motif.places
        .slice(0, 4)
        .map((place, k) =>
          notePassage(input, place.first, place.last, `motif ${m + 1}${describe(place, k)}`),
        ),
    ),
  };
}

function describe(place: MotifPlace, k: number): string {
  if (k === 0) return '';
  const moved =
    place.semitones === 0
      ? 'again'
      : `${Math.abs(place.semitones)} semitones ${place.semitones > 0 ? 'higher' : 'lower'}`;
  return `, ${moved}${place.isShifted ? ', elsewhere in the bar' : ''}`;
}

/** Cells of `size` notes that come back, most often first. A run of one value up or down the scale is no motif. */
function repeatsOf(
  { alignment, notes, context }: EvidenceInput,
  size: number,
): readonly (readonly MotifPlace[])[] {
  const rhythm = alignment?.rhythm ?? [];
  const bar = beatFrame(context.metre).beatsPerBar * ticksPerBeat;
  const degree = createDegrees(context.scale);
  const cells = new Map<string, number[]>();
  for (let i = 0; i + size <= notes.length; i++) {
    const steps: number[] = [];
    const gaps: number[] = [];
    for (let k = i + 1; k < i + size; k++) {
      steps.push(degree(notes[k]?.midi ?? 0) - degree(notes[k - 1]?.midi ?? 0));
      gaps.push((rhythm[k]?.tick ?? 0) - (rhythm[k - 1]?.tick ?? 0));
    }
    const isPlain =
      new Set(gaps).size === 1 && (new Set(steps.map((s) => Math.sign(s))).size === 1 || size < 5);
    if (isPlain || gaps.some((gap) => gap > bar)) continue;
    const key = `${steps.join(' ')}|${gaps.join(' ')}`;
    const known = cells.get(key);
    if (known === undefined) cells.set(key, [i]);
    else if (i >= (known.at(-1) ?? 0) + size) known.push(i);
  }
  return [...cells.values()]
    .filter((starts) => starts.length > 1)
    .sort((a, b) => b.length - a.length)
    .map((starts) => {
      const origin = starts[0] ?? 0;
      return starts.map((first) => ({
        first,
        last: first + size - 1,
        semitones: (notes[first]?.midi ?? 0) - (notes[origin]?.midi ?? 0),
        isShifted: ((rhythm[first]?.tick ?? 0) - (rhythm[origin]?.tick ?? 0)) % bar !== 0,
      }));
    });
}

/** Steps of the scale for a MIDI number, so that a sequence counts as the same cell; semitones where no scale is given. */
function createDegrees(scale: ReadonlySet<number> | null): (midi: number) => number {
  if (scale === null) return (midi) => midi;
  const classes = [...scale].sort((a, b) => a - b);
  return (midi) => {
    const octave = Math.floor(midi / 12);
    const within = midi % 12;
    const below = classes.filter((pc) => pc <= within).length - 1;
    const inside = scale.has(within);
    return octave * classes.length + below + (inside ? 0 : 0.5);
  };
}
