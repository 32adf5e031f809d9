import { expect, test } from 'vitest';
import { present, type Stage } from '#core';
import { findInstrument } from '../../instrument/instrument.ts';
import { scoreToMusicXml } from '../../musicxml/score-to-musicxml.ts';
import { formatPitch, pitchToMidi } from '../../pitch/pitch.ts';
import type { Score } from '../../score/score.ts';
import { parseMaterialSpec } from '../../spec/material-spec.ts';
import { createSheet } from '../create-sheet.ts';

function scoreOf(
  fields: Readonly<Record<string, unknown>>,
  instrument: string,
  stage: Stage = 'intermediate',
): Score {
  const spec = parseMaterialSpec(fields);
  if (!spec.ok) throw new Error(spec.error.message);
  const sheet = createSheet(spec.value, {
    instrument: present(findInstrument(instrument), instrument),
    stage,
    age: null,
    seed: 1,
  });
  if (!sheet.ok) throw new Error(sheet.error.message);
  return sheet.value.score;
}

const pitchesOf = (score: Score, staff = 1) =>
  score.parts.flatMap(({ bars }) =>
    bars.flatMap(({ voices }) =>
      voices
        .filter((voice) => voice.staff === staff)
        .flatMap(({ events }) =>
          events.flatMap((event) => (event.kind === 'note' ? event.heads.map(({ pitch }) => pitch) : [])),
        ),
    ),
  );

test.each(['C', 'G', 'D', 'A', 'F', 'Bb', 'Eb'])('a chromatic scale on %s moves by semitones', (start) => {
  const pitches = pitchesOf(
    scoreOf({ kind: 'scale', scale: 'chromatic', start, keys: 1, octaves: 1 }, 'clarinet_bb'),
  );
  const moves = pitches.slice(1).map((pitch, i) => {
    const from = present(pitches[i], 'a note before');
    return [`${formatPitch(from)} ${formatPitch(pitch)}`, pitchToMidi(pitch) - pitchToMidi(from)] as const;
  });
  // The filled last group may turn round a neighbour; nothing leaps.
  expect(moves.filter(([, size]) => Math.abs(size) > 2)).toEqual([]);
});

test('both hands of a piano scale keep to their own clefs in the usual keys', () => {
  const score = scoreOf({ kind: 'scale', start: 'C', keys: 1, octaves: 2 }, 'piano');
  for (const { clefs } of present(score.parts[0], 'a part').bars) expect(clefs).toEqual(['treble', 'bass']);
  const [right, left] = [pitchesOf(score, 1), pitchesOf(score, 2)];
  const apart = right.map((pitch, i) => pitchToMidi(pitch) - pitchToMidi(present(left[i], 'a left hand')));
  expect(new Set(apart.map((size) => size % 12))).toEqual(new Set([0]));
});

// Common practice, no source: long scales on the piano climb from one clef into the other, and under an octave line.
test('four octaves on the piano: hands an octave apart, the right one up from the bass clef and under an octave line', () => {
  const score = scoreOf({ kind: 'scale', start: 'C', keys: 1, octaves: 4 }, 'piano', 'advanced');
  const [right, left] = [pitchesOf(score, 1), pitchesOf(score, 2)];
  expect(right.map((pitch, i) => pitchToMidi(pitch) - pitchToMidi(present(left[i], 'a note below')))).toEqual(
    right.map(() => 12),
  );
  const bars = present(score.parts[0], 'a part').bars;
  expect(bars[0]?.clefs).toEqual(['bass', 'bass']);
  expect(bars.at(-1)?.clefs).toEqual(['bass', 'bass']);
  const lines = bars.flatMap(({ directions }) => directions.filter(({ kind }) => kind.startsWith('octave')));
  expect(lines.map(({ kind, staff }) => `${kind} ${staff}`)).toEqual(['octave-up 1', 'octave-end 1']);
  const shifts = scoreToMusicXml(score).match(/<octave-shift type="(down|stop)" size="8" number="1"\/>/g);
  expect(shifts).toHaveLength(2);
});

test('two octaves need neither', () => {
  const score = scoreOf({ kind: 'scale', start: 'C', keys: 1, octaves: 2 }, 'piano', 'advanced');
  for (const bar of present(score.parts[0], 'a part').bars) {
    expect(bar.clefs).toEqual(['treble', 'bass']);
    expect(bar.directions.filter(({ kind }) => kind.startsWith('octave'))).toEqual([]);
  }
});

// Common practice, no source: a beginner at the piano has one hand over five keys, from middle C up or from the C below.
test.each([
  ['right', { kind: 'scale', octaves: 'five_notes', keys: 1 }, 'C4 D4 E4 F4 G4'],
  ['left', { kind: 'scale', octaves: 'five_notes', keys: 1, hands: 'left' }, 'C3 D3 E3 F3 G3'],
  [
    'a tune',
    { kind: 'chart', chart: '| C | G7 |', melody: 'E4:1 D4:1 C4:2 | G4:2 F4:2', key: 'fit' },
    'E4 D4 C4 G4 F4',
  ],
])('a pianist’s first five notes lie under one hand: %s', (_, fields, wanted) => {
  const pitches = pitchesOf(scoreOf(fields, 'piano', 'beginner')).map(formatPitch);
  expect([...new Set(pitches)].join(' ')).toBe(wanted);
});
