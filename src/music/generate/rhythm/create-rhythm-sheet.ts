// Rhythm studies: lines on one comfortable pitch, or with a step of the scale for each bar.

import { createSeededRandom, err, ok, present, type Result } from '#core';
import { isInRange } from '../../instrument/instrument.ts';
import { fifthsToKey } from '../../key/key.ts';
import { nameAtOrAbove } from '../../pitch/interval.ts';
import { type PitchName, type WrittenPitch, written } from '../../pitch/pitch.ts';
import { parseMetre } from '../../rhythm/metre.ts';
import { easiestTonic, scaleFifths, spellScale } from '../../scale/scale.ts';
import { note } from '../../score/create-score.ts';
import { type SheetFor, shapeFor, staffRange } from '../../shape/student-shape.ts';
import type { RhythmSpec } from '../../spec/material-spec.ts';
import { assembleLines, barsAcrossFor, type SheetLine } from '../sheet/assemble-lines.ts';
import { chooseClef, ledgerLines } from '../sheet/choose-clef.ts';
import { ladder } from '../sheet/ladder.ts';
import type { Draft, ShapingNote, SheetRefused } from '../sheet/sheet.ts';
import { comfortableTonics, namedTonic } from '../sheet/student-keys.ts';
import { tempoIn } from '../sheet/tempo.ts';
import { writeLine } from '../sheet/write-line.ts';
import { barTicks } from './beat-grid.ts';
import { composeRhythm } from './compose-rhythm.ts';
import { rhythmOptions } from './rhythm-plan.ts';

/** Steps of the scale for bar after bar: up to the fifth and home. */
const walk = [0, 1, 2, 3, 4, 3, 2, 1];

/** The pitch of each bar; null where the range holds none. */
function pitchesFor(spec: RhythmSpec, student: SheetFor, tonic: PitchName): readonly WrittenPitch[] | null {
  const range = staffRange(student.instrument, student.stage);
  const clef = chooseClef(shapeFor(student).readsClefs, [range.low, range.high]);
  const rungs = ladder(spellScale(tonic, 'major'), range);
  const middle = (rungs.length - 1) / 2;
  const places = rungs.flatMap(({ degree, pitch }, i) => {
    if (degree !== 0) return [];
    const path = spec.on === 'one_pitch' ? [i] : walk.map((step) => i + step);
    const pitches = path.map((at) => rungs[at]?.pitch);
    if (pitches.some((p) => p === undefined)) return [];
    const inside = pitches.filter((p) => p !== undefined);
    return [{ pitches: inside, cost: Math.abs(i - middle) + 4 * ledgerLines(clef, pitch) }];
  });
  return places.sort((a, b) => a.cost - b.cost)[0]?.pitches ?? null;
}

/** A rhythm sheet for a student, or why there is none. */
export function createRhythmSheet(spec: RhythmSpec, student: SheetFor): Result<Draft, SheetRefused> {
  const { instrument } = student;
  const shape = shapeFor(student);
  const typed = namedTonic(spec.start, spec.pitch, instrument);
  const named = typed === null ? null : easiestTonic(typed, 'major');
  const tonics = named === null ? comfortableTonics(student, 'major') : [named];
  const placed = tonics
    .map((tonic) => ({ tonic, pitches: pitchesFor(spec, student, tonic) }))
    .find(({ pitches }) => pitches !== null);
  const oneNote = placed === undefined && named !== null ? anyPlace(student, named) : null;
  const pitches = placed?.pitches ?? (oneNote === null ? null : [oneNote]);
  const tonic = placed?.tonic ?? named;
  if (pitches === null || tonic === null) {
    const message = `No room for ${spec.on === 'scale' ? 'five notes of the scale' : 'this pitch'} in the range of the ${instrument.name} at this stage.`;
    return err({ kind: 'RangeTooSmall', message });
  }
  const random = createSeededRandom(student.seed);
  const metre = present(parseMetre(spec.metre === 'fit' ? '4/4' : spec.metre), 'a metre of the list');
  const bars = spec.bars === 'fit' ? 4 : spec.bars;
  const lines = spec.lines === 'fit' ? shape.lines : spec.lines;
  const clef = chooseClef(shape.readsClefs, pitches);
  const key = fifthsToKey(scaleFifths(tonic, 'major'), 'major');
  let isWidened = false;
  const sheetLines = Array.from({ length: lines }, (_, line): SheetLine => {
    const options = rhythmOptions(spec, shape, metre, bars, { line, lines });
    const composed = composeRhythm(random, options);
    isWidened ||= composed.isWidened;
    const length = barTicks(metre);
    const events = composed.slots.map((slot) => {
      const bar = Math.floor(slot.at / length);
      const step = bars > 1 && bar === bars - 1 ? 0 : bar % pitches.length;
      const pitch = present(pitches[step], 'a pitch for each bar');
      return { slot, event: slot.isRest ? null : note(pitch, { n: 1, d: 1 }) };
    });
    const written = writeLine(metre, bars, events).map((staff) => ({ staves: [staff] }));
    return { key, metre, clefs: [clef], bars: written, label: lines > 1 ? String(line + 1) : null };
  });
  const notes: ShapingNote[] = isWidened
    ? [
        {
          kind: 'ValuesWidened',
          text: 'The note values asked for do not fill a beat of this metre alone; the beat itself was added.',
        },
      ]
    : [];
  const score = assembleLines(
    {
      title: 'Rhythm',
      instrument,
      tempo: tempoIn(metre, spec.tempo === 'fit' ? shape.tempo.reading : spec.tempo),
      swing: null,
      barsAcross: barsAcrossFor(sheetLines),
      opensSystems: bars > 2,
    },
    sheetLines,
  );
  return ok({ score, notes });
}

/** A named pitch anywhere in the range, for one-pitch lines. */
function anyPlace({ instrument, stage }: SheetFor, name: PitchName): WrittenPitch | null {
  const range = staffRange(instrument, stage);
  const pitch = written(nameAtOrAbove(name, range.low));
  return isInRange(range, pitch) ? pitch : null;
}
