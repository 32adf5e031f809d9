// Chord shapes on guitar and ukulele, found by search: every set of frets a hand can hold, ranked by how easily and how fully.
// A hand covers four frets and has four fingers, the first may lie flat across strings, and strings that are not played stand
// outside those that are (common practice). checks/instruments compares the first choices with the usual open shapes.

import { type Chord, chordTones } from '../chord/chord.ts';
import { type InstrumentId, instrumentOf, openStrings } from '../instrument/instrument.ts';
import { type PitchName, pitchClass, pitchToMidi } from '../pitch/pitch.ts';

export interface VoicingBarre {
  readonly fret: number;
  /** Strings from the lowest course, counted from 0, both included. */
  readonly from: number;
  readonly to: number;
}

/** One way to hold a chord. Strings as the instrument lists them: the lowest course first. */
export interface ChordVoicing {
  /** 0 open, null not played. */
  readonly frets: readonly (number | null)[];
  /** 1 to 4; null on open and unplayed strings. */
  readonly fingers: readonly (number | null)[];
  readonly barre: VoicingBarre | null;
}

interface Board {
  readonly tuning: readonly number[];
  readonly highestFret: number;
  /** Few strings: all are played, and the bass may be any tone. */
  readonly small: boolean;
}

const boardIds: ReadonlySet<InstrumentId> = new Set(['guitar', 'ukulele']);
const reach = 4;

function boardOf(id: InstrumentId): Board | null {
  if (!boardIds.has(id)) return null;
  const tuning = openStrings(instrumentOf(id)).map(pitchToMidi);
  return { tuning, highestFret: 11, small: tuning.length === 4 };
}

interface Wanted {
  readonly all: ReadonlySet<number>;
  /** Those that tell the chord. */
  readonly needed: readonly number[];
  readonly bass: number;
}

/** Tones a shape may leave out: a perfect fifth beside a seventh or sixth, the ninth (and eleventh) of chords built higher. */
function wantedTones(chord: Chord, board: Board): Wanted {
  const tones: readonly PitchName[] = chordTones(chord);
  const degrees = chord.quality.degrees;
  const top = Math.max(...degrees.map((degree) => Number(degree.replace(/[b#]/g, ''))));
  const needed = tones.filter((_tone, i) => {
    const degree = degrees[i];
    if (tones.length <= 3) return true;
    if (degree === '5') return false;
    // Four strings cannot hold five tones: someone else has the root.
    if (degree === '1' && board.small && tones.length > 4) return false;
    // An altered chord is told by one of its alterations.
    if (chord.quality.id === 'altered_dominant') return ['1', '3', 'b7', degrees.at(-1)].includes(degree);
    if (top === 13 && (degree === '9' || degree === '11')) return false;
    return !(top === 11 && degree === '9');
  });
  const bass = chord.bass ?? chord.root;
  return {
    all: new Set([...tones, bass].map(pitchClass)),
    needed: needed.map(pitchClass),
    bass: pitchClass(bass),
  };
}

/** Frets on one string that sound a wanted tone: open, or in the window. */
function choices(open: number, wanted: Wanted, window: number): readonly (number | null)[] {
  const frets: (number | null)[] = [];
  for (const fret of [0, ...Array.from({ length: reach }, (_none, i) => window + i)]) {
    if (wanted.all.has((open + fret) % 12)) frets.push(fret);
  }
  return [...frets, null];
}

/** The barre that the lowest fret of a shape offers: from its first string to its last, nothing open between or above. */
function barreOf(frets: readonly (number | null)[]): VoicingBarre | null {
  const fretted = frets.filter((fret) => fret !== null && fret > 0);
  const fret = Math.min(...fretted.map((f) => f ?? 0));
  const from = frets.indexOf(fret);
  const to = frets.lastIndexOf(fret);
  if (from === to) return null;
  const between = frets.slice(from, to + 1);
  return between.every((f) => f !== null && f >= fret) ? { fret, from, to } : null;
}

/** Fingers by fret, and along a fret from the lowest course up; null when there are too few. */
function fingerShape(frets: readonly (number | null)[]): ChordVoicing | null {
  const fretted = frets.flatMap((fret, string) => (fret === null || fret === 0 ? [] : [{ fret, string }]));
  const offered = barreOf(frets);
  // Three fingers in a row on one fret are easier than a barre; more are not to be had.
  const barre = offered !== null && fretted.length > 4 ? offered : null;
  const flat = barre ?? (offered !== null && offered.to - offered.from >= 4 ? offered : null);
  const single = fretted
    .filter(
      ({ fret, string }) =>
        !(flat !== null && fret === flat.fret && string >= flat.from && string <= flat.to),
    )
    .toSorted((a, b) => a.fret - b.fret || a.string - b.string);
  const firstFree = flat === null ? 1 : 2;
  if (single.length + firstFree - 1 > 4) return null;
  const fingers = frets.map((fret, string): number | null => {
    if (fret === null || fret === 0) return null;
    const place = single.findIndex((s) => s.string === string);
    return place < 0 ? 1 : firstFree + place;
  });
  return { frets, fingers, barre: flat };
}

/** Smaller is easier to hold and fuller to hear (common practice, no source). */
function effort(voicing: ChordVoicing, board: Board, wanted: Wanted): number {
  const { frets, barre } = voicing;
  const fretted = frets.filter((fret) => fret !== null && fret > 0).map((fret) => fret ?? 0);
  const sounding = frets.flatMap((fret, i) => (fret === null ? [] : [(board.tuning[i] ?? 0) + fret]));
  const used = new Set(voicing.fingers.filter((finger) => finger !== null)).size;
  const lowest = Math.min(...fretted, 12);
  const span = fretted.length === 0 ? 0 : Math.max(...fretted) - lowest;
  let cost = used + span + (fretted.length === 0 ? 0 : 0.7 * lowest);
  if (barre !== null) cost += 2;
  const unplayed = frets.filter((fret) => fret === null).length;
  cost += 1.4 * unplayed + Math.max(0, unplayed - 2);
  if (span === 3) cost += 0.8;
  // Open strings ring strangely beside a hand further up, and are in the way inside a shape.
  const highest = Math.max(...fretted, 0);
  frets.forEach((fret, i) => {
    if (fret !== 0) return;
    if (highest > 3) cost += 1.2;
    if ((frets[i - 1] ?? 0) > 0 && (frets[i + 1] ?? 0) > 0) cost += 0.5;
  });
  // A string left out above those that sound cuts the chord's top off.
  if (frets.at(-1) === null) cost += 2;
  const classes = new Set(sounding.map((midi) => midi % 12));
  cost += 2 * [...wanted.all].filter((tone) => !classes.has(tone)).length;
  if (Math.min(...sounding) % 12 !== wanted.bass) cost += board.small ? 0.4 : 12;
  return cost;
}

/**
 * Ways to hold a chord, the easiest and fullest first, at most `limit`; empty when the instrument has no chord shapes or no
 * hand can hold the chord. Guitar C → x 3 2 0 1 0, fingers 3 2 1; ukulele F → 2 0 1 0
 */
export function chordVoicings(id: InstrumentId, chord: Chord, limit = 6): readonly ChordVoicing[] {
  const board = boardOf(id);
  if (board === null) return [];
  const wanted = wantedTones(chord, board);
  const fewest = chord.quality.tones.length === 2 ? 2 : board.small ? 4 : 3;
  const found = new Map<string, { readonly voicing: ChordVoicing; readonly cost: number }>();
  const consider = (frets: readonly (number | null)[]) => {
    const key = frets.join(' ');
    if (found.has(key)) return;
    const played = frets.flatMap((fret, i) => (fret === null ? [] : [((board.tuning[i] ?? 0) + fret) % 12]));
    if (played.length < fewest || !wanted.needed.every((tone) => played.includes(tone))) return;
    const voicing = fingerShape(frets);
    if (voicing !== null) found.set(key, { voicing, cost: effort(voicing, board, wanted) });
  };
  const extend = (frets: readonly (number | null)[], window: number) => {
    const open = board.tuning[frets.length];
    if (open === undefined) {
      // Shapes that do not use the window's first fret are found from a later window.
      if (frets.includes(window) || window === 1) consider(frets);
      return;
    }
    const closed = frets.length > 0 && frets.at(-1) === null && frets.some((fret) => fret !== null);
    for (const fret of closed ? [null] : choices(open, wanted, window)) extend([...frets, fret], window);
  };
  for (let window = 1; window + reach - 1 <= board.highestFret; window++) extend([], window);
  return [...found.values()]
    .toSorted((a, b) => a.cost - b.cost)
    .slice(0, limit)
    .map(({ voicing }) => voicing);
}
