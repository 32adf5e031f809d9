import { expect, test } from 'vitest';
import { present } from '#core';
import { barsOfUpbeat, scoreToBacking } from '../../backing/score-backing.ts';
import { chordTones } from '../../chord/chord.ts';
import { describeScore } from '../../describe/describe-score.ts';
import { findInstrument } from '../../instrument/instrument.ts';
import { scoreToMusicXml } from '../../musicxml/score-to-musicxml.ts';
import { pitchClass } from '../../pitch/pitch.ts';
import { findScoreFaults } from '../../score/find-score-faults.ts';
import type { Score } from '../../score/score.ts';
import { parseMaterialSpec } from '../../spec/material-spec.ts';
import { createSheet } from '../create-sheet.ts';

function phrase(fields: Readonly<Record<string, unknown>>, instrumentId = 'flute', seed = 1): Score {
  const spec = parseMaterialSpec({ kind: 'phrase', ...fields });
  if (!spec.ok) throw new Error(spec.error.message);
  const instrument = present(findInstrument(instrumentId), instrumentId);
  const made = createSheet(spec.value, { instrument, stage: 'elementary', age: null, seed });
  if (!made.ok) throw new Error(made.error.message);
  return made.value.score;
}

const measures = (score: Score) => scoreToMusicXml(score).split('<measure ').slice(1);

test('the notes to use are heads alone, in one full bar without number or metre; the music begins with bar 1', () => {
  const score = phrase({ metre: '3/4', compass: 5 });
  expect(findScoreFaults(score)).toEqual([]);
  const [notes = '', first = ''] = measures(score);
  expect(notes).toMatch(/^number="0" implicit="yes"/);
  expect(notes).toContain('<time print-object="no"><beats>5</beats><beat-type>4</beat-type></time>');
  expect(notes.match(/<note>/g)).toHaveLength(5);
  expect(notes.match(/<stem>none<\/stem>/g)).toHaveLength(5);
  expect(notes).not.toContain('<rest');
  expect(first).toMatch(/^number="1">/);
  expect(first).toContain('<time><beats>3</beats><beat-type>4</beat-type></time>');
  expect(measures(phrase({ metre: '3/4', showScale: false }))[0]).toMatch(/^number="1">/);
});

test('screen readers hear names where there is no rhythm to hear', () => {
  const told = describeScore(phrase({ start: 'C', metre: '3/4', compass: 3, rounds: 1 }));
  expect(told).toContain('\nFree notes: “Notes to use”. Notes C 5, D 5, E 5.\n');
  expect(told).toContain('\n3/4. ');
  expect(told).not.toContain('now 3/4');
});

test('play 2, rest 2 over a chart of four bars ends with the student on its last chord', () => {
  for (let seed = 1; seed <= 20; seed++) {
    const chart = '| Dm7 | G7 | Cmaj7 | % |';
    const score = phrase(
      { chart, content: 'written', scale: 'major', showScale: false },
      'clarinet_bb',
      seed,
    );
    const bars = present(score.parts[0], 'a part').bars;
    expect(bars).toHaveLength(16);
    const events = bars.map((bar) => present(bar.voices[0], 'a voice').events);
    const isSilent = events.map((some) => some.every(({ kind }) => kind === 'rest'));
    expect(
      isSilent
        .slice(0, 12)
        .map((silent) => (silent ? '-' : 'p'))
        .join(''),
    ).toBe('pp--pp--pp--');
    const last = events
      .slice(12)
      .flat()
      .findLast((event) => event.kind === 'note');
    const home = present(bars[2]?.chords[0]?.chord, 'the third chord');
    const pitch = present(last?.kind === 'note' ? last.heads[0] : undefined, 'a last note').pitch;
    expect(chordTones(home).map(pitchClass), `seed ${seed}`).toContain(pitchClass(pitch));
  }
});

test('the band under a play-and-rest sheet begins where its music does', () => {
  const score = phrase({ chart: '| Dm7 | G7 | Cmaj7 | % |', pitch: 'concert', start: 'C' });
  expect(score.bars[0]?.isFree).toBe(true);
  expect(barsOfUpbeat(score.bars)).toBe(1);
  const band = scoreToBacking(score);
  expect(band?.chart.replaceAll('\n', ' ')).toMatch(/^\| Dm7 \| G7 \| Cmaj7 \|/);
});

test('what swings holds no semiquavers', () => {
  for (let seed = 1; seed <= 20; seed++) {
    const score = phrase({ content: 'rhythm', feel: 'swing', grade: 6 }, 'flute', seed);
    expect(scoreToMusicXml(score), `seed ${seed}`).not.toContain('<type>16th</type>');
  }
});

test('a pianist’s first notes to use are those from middle C up', () => {
  const spec = parseMaterialSpec({ kind: 'phrase', start: 'C' });
  if (!spec.ok) throw new Error(spec.error.message);
  const instrument = present(findInstrument('piano'), 'piano');
  const made = createSheet(spec.value, { instrument, stage: 'beginner', age: 7, seed: 1 });
  if (!made.ok) throw new Error(made.error.message);
  expect(describeScore(made.value.score)).toContain('Notes C 4, D 4, E 4, F 4, G 4.');
});
