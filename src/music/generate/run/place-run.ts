// Fits a study into the range of the stage: as many octaves as it holds, else five notes, else from the tonic to the top,
// down to the bottom and home.

import { isInRange, type WrittenRange } from '../../instrument/instrument.ts';
import { type Interval, nameAtOrAbove, transposePitch } from '../../pitch/interval.ts';
import { type PitchName, pitchToMidi, type WrittenPitch, written } from '../../pitch/pitch.ts';
import { type Run, type RunDirection, type RunFigure, type RunNote, runThrough, runTo } from './run-notes.ts';

/** The intervals of a scale or chord over its tonic, on the way up and on the way down. */
export interface Steps {
  readonly rising: readonly Interval[];
  readonly falling: readonly Interval[];
  /** Whether the tones repeat at the octave; a stack up to the ninth or thirteenth does not. */
  readonly repeats: boolean;
}

export interface PlacedRun {
  readonly tonic: WrittenPitch;
  readonly run: Run;
  /** Octaves it spans; 0 for less than one. */
  readonly octaves: number;
}

export interface WantedRun {
  readonly name: PitchName;
  readonly steps: Steps;
  readonly figure: RunFigure;
  readonly direction: RunDirection;
  readonly octaves: number | 'five_notes' | 'whole_range';
  readonly range: WrittenRange;
  /** What a place costs: the cheapest is taken. */
  readonly cost: (pitches: readonly WrittenPitch[]) => number;
}

/** The pitch of a run's note. */
export function runPitch(tonic: WrittenPitch, steps: Steps, note: RunNote): WrittenPitch {
  const table = note.isFalling ? steps.falling : steps.rising;
  const octave = Math.floor(note.step / table.length);
  const interval = table[note.step - octave * table.length] ?? { diatonic: 0, chromatic: 0 };
  const diatonic = interval.diatonic + 7 * octave;
  return written(transposePitch(tonic, { diatonic, chromatic: interval.chromatic + 12 * octave }));
}

/** All tonics of a name in the range. */
function tonicsIn(name: PitchName, range: WrittenRange): readonly WrittenPitch[] {
  const found: WrittenPitch[] = [];
  let pitch = written(nameAtOrAbove(name, range.low));
  while (pitchToMidi(pitch) <= pitchToMidi(range.high)) {
    found.push(pitch);
    pitch = written({ ...pitch, octave: pitch.octave + 1 });
  }
  return found;
}

/** The pitches of a run and its last note. */
export function runPitches({ tonic, run }: PlacedRun, steps: Steps): readonly WrittenPitch[] {
  return [...run.notes, run.last].map((note) => runPitch(tonic, steps, note));
}

const plainFigure: RunFigure = { offsets: [0], stride: 1 };

function cheapest(wanted: WantedRun, runs: readonly PlacedRun[]): PlacedRun | null {
  let best: PlacedRun | null = null;
  let lowest = Number.POSITIVE_INFINITY;
  for (const placed of runs) {
    const pitches = runPitches(placed, wanted.steps);
    if (!pitches.every((pitch) => isInRange(wanted.range, pitch))) continue;
    const cost = wanted.cost(pitches);
    if (cost < lowest) [best, lowest] = [placed, cost];
  }
  return best;
}

/** From tonic to the top and bottom of the range; null with too few notes to play: five of a scale, three of a chord. */
function throughRange({ name, steps, range }: WantedRun): PlacedRun | null {
  let best: PlacedRun | null = null;
  let most = steps.rising.length >= 5 ? 4 : 2;
  for (const tonic of tonicsIn(name, range)) {
    const fits = (step: number) =>
      [true, false].every((isFalling) => isInRange(range, runPitch(tonic, steps, { step, isFalling })));
    let [bottom, top] = [0, 0];
    while (top < steps.rising.length * 3 && fits(top + 1)) top++;
    while (bottom > -steps.rising.length * 2 && fits(bottom - 1)) bottom--;
    if (top - bottom + 1 <= most) continue;
    most = top - bottom + 1;
    best = { tonic, run: runThrough(bottom, top), octaves: 0 };
  }
  return best;
}

/** The study in the range, as near to what was wanted as it holds; null when the range has no room for this tonic. */
export function placeRun(wanted: WantedRun): PlacedRun | null {
  const { name, steps, range, figure, direction, octaves } = wanted;
  const count = steps.rising.length;
  if (octaves === 'whole_range' && steps.repeats) return throughRange(wanted);
  const tonics = tonicsIn(name, range);
  if (!steps.repeats) return placeStack(wanted, tonics);
  const most = typeof octaves === 'number' ? octaves : 0;
  for (let tried = most; tried >= 0; tried--) {
    const top = tried === 0 ? Math.min(4, count - 1) : count * tried;
    // Less than an octave of a chord holds no figure: C G G C says nothing.
    const isTight = tried === 0 && count <= 4 && figure.offsets.length > 1;
    const shown = isTight ? plainFigure : figure;
    const runs = tonics.map((tonic) => ({ tonic, run: runTo(top, shown, direction), octaves: tried }));
    const found = cheapest(wanted, runs);
    if (found !== null) return found;
  }
  return throughRange(wanted);
}

/** A chord past the octave, with its highest tones left out where the range ends below them; three tones are least. */
function placeStack(wanted: WantedRun, tonics: readonly WrittenPitch[]): PlacedRun | null {
  const { steps, figure, direction } = wanted;
  const whole = steps.rising.length - 1;
  for (let top = whole; top >= 2; top--) {
    const octaves = top === whole ? 1 : 0;
    const found = cheapest(
      wanted,
      tonics.map((tonic) => ({ tonic, run: runTo(top, figure, direction), octaves })),
    );
    if (found !== null) return found;
  }
  return null;
}
