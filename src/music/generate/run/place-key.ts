// Places one key of a study on the page: in the range of the stage, on one staff or for both hands.

import { type Clef, isInRange, rangeAtStage, type WrittenRange } from '../../instrument/instrument.ts';
import { type Pitch, type PitchName, staffStep, type WrittenPitch, written } from '../../pitch/pitch.ts';
import { easyRegister } from '../../shape/easy-register.ts';
import { type SheetFor, type StudentShape, staffRange } from '../../shape/student-shape.ts';
import { chooseClef, ledgerLines } from '../sheet/choose-clef.ts';
import { firstHandMiddle, isFirstHand, rangeMiddle } from '../sheet/home-middle.ts';
import { type PlacedRun, placeRun, runPitch, type Steps, type WantedRun } from './place-run.ts';
import type { RunSpec, Study } from './run-study-spec.ts';

/** What a place in the range costs: ledger lines, distance from the middle, and notes outside a beginner's easy register. */
function placeCost(student: SheetFor, range: WrittenRange, clefs: readonly Clef[]) {
  const away = costFrom(rangeMiddle(range));
  const easy = easyRegister(student.instrument, student.stage);
  return (pitches: readonly WrittenPitch[]): number => {
    const clef = chooseClef(clefs, pitches);
    const ledgers = pitches.reduce((sum, pitch) => sum + ledgerLines(clef, pitch), 0) / pitches.length;
    const strained =
      easy === null ? 0 : pitches.filter((pitch) => !isInRange(easy, pitch)).length / pitches.length;
    return ledgers * 4 + away(pitches) + strained * 20;
  };
}

const averageStep = (pitches: readonly WrittenPitch[]): number =>
  pitches.reduce((sum, pitch) => sum + staffStep(pitch), 0) / pitches.length;

/** What lying away from this middle costs, in letter steps. */
const costFrom =
  (middle: number) =>
  (pitches: readonly WrittenPitch[]): number =>
    Math.abs(averageStep(pitches) - middle);

/** One key on the page. */
export interface PlacedKey {
  readonly tonic: PitchName;
  readonly staves: readonly { readonly clef: Clef; readonly run: PlacedRun }[];
}

/** Places one key on the staff, or the staves of both hands. */
export function placeKey(
  spec: RunSpec,
  study: Study,
  student: SheetFor,
  shape: StudentShape,
  tonic: PitchName,
): PlacedKey | null {
  const { instrument, stage } = student;
  const steps = study.steps(tonic);
  const range = rangeAtStage(instrument, stage);
  const fitOctaves = Math.max(study.leastOctaves, Math.min(shape.octaves, shape.isKeyboard ? 2 : 4));
  const octaves = spec.octaves === 'fit' ? fitOctaves : spec.octaves;
  const wanted = { name: tonic, steps, figure: study.figure, direction: spec.direction, octaves };
  if (!shape.isKeyboard) {
    const run = placeRun({ ...wanted, range, cost: placeCost(student, range, shape.readsClefs) });
    if (run === null) return null;
    const clef = chooseClef(shape.readsClefs, pitchesOf(run, steps));
    return { tonic, staves: [{ clef, run }] };
  }
  return placeHands(spec, student, { ...wanted, range });
}

type Wanted = Omit<WantedRun, 'cost'>;

/** The hands of a keyboard: one in the half of the range that is its own, or both an octave or two apart. */
function placeHands(spec: RunSpec, student: SheetFor, wanted: Wanted): PlacedKey | null {
  const { instrument, stage } = student;
  const { name: tonic, steps, range, octaves } = wanted;
  const hands = spec.hands === 'fit' ? (student.stage === 'beginner' ? 'right' : 'both') : spec.hands;
  if (hands !== 'both') {
    const clef: Clef = hands === 'right' ? 'treble' : 'bass';
    const half = halfOf(range, clef);
    const cost = isFirstHand(student) ? costFrom(firstHandMiddle(half)) : placeCost(student, half, [clef]);
    const run =
      placeRun({ ...wanted, range: half, cost }) ??
      placeRun({ ...wanted, cost: placeCost(student, range, [clef]) });
    return run === null ? null : { tonic, staves: [{ clef, run }] };
  }
  const most = typeof octaves === 'number' ? octaves : 1;
  for (let tried = most; tried >= 0; tried--) {
    const span = tried === 0 ? ('five_notes' as const) : octaves === 'five_notes' ? octaves : tried;
    const own = staffRange(instrument, stage, 'right');
    const cost = placeCost(student, own, ['treble']);
    // Rather low than beyond what is read without counting lines.
    const kept = placeRun({ ...wanted, range: { low: range.low, high: own.high }, octaves: span, cost });
    const isWhole = kept !== null && (typeof span !== 'number' || kept.octaves === span);
    const right = isWhole ? kept : placeRun({ ...wanted, octaves: span, cost });
    if (right === null) continue;
    const lower = (down: number) => ({
      ...right,
      tonic: written({ ...right.tonic, octave: right.tonic.octave - down }),
    });
    // Two octaves apart where the left hand would climb far over its staff; over three octaves it changes clef in any case
    // (common practice, no source).
    const isNear =
      right.octaves > 2 || pitchesOf(lower(1), steps).every((pitch) => ledgerLines('bass', pitch) <= 3);
    for (const down of isNear ? [1, 2, 3] : [2, 1, 3]) {
      const left = lower(down);
      if (!pitchesOf(left, steps).every((pitch) => isInRange(range, pitch))) continue;
      return {
        tonic,
        staves: [
          { clef: 'treble', run: right },
          { clef: 'bass', run: left },
        ],
      };
    }
  }
  return null;
}

const middleC: Pitch = { letter: 'C', alter: 0, octave: 4 };

/** The part of a keyboard's range that belongs to a clef. */
function halfOf(range: WrittenRange, clef: Clef): WrittenRange {
  const c = written(middleC);
  if (clef === 'bass') {
    const top = written({ letter: 'E', alter: 0, octave: 4 });
    return { low: range.low, high: isInRange(range, top) ? top : range.high };
  }
  return { low: isInRange(range, c) ? c : range.low, high: range.high };
}

function pitchesOf({ tonic, run }: PlacedRun, steps: Steps): readonly WrittenPitch[] {
  return [...run.notes, run.last].map((note) => runPitch(tonic, steps, note));
}
