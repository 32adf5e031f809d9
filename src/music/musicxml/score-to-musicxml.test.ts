// Source of the elements: MusicXML 4.0 (W3C, 2021), read in its schema; validity is judged in checks/musicxml.
import { expect, test } from 'vitest';
import { present } from '#core';
import { parseChord } from '../chord/chord.ts';
import { fraction } from '../fraction/fraction.ts';
import { findInstrument } from '../instrument/instrument.ts';
import { fifthsToKey } from '../key/key.ts';
import { parsePitch, written } from '../pitch/pitch.ts';
import { createMetre } from '../rhythm/metre.ts';
import {
  barRest,
  chordSymbol,
  createScore,
  hit,
  note,
  part,
  partBar,
  rest,
  scoreBar,
  slash,
  swingMark,
  tempoMark,
  tuplet,
  withSystems,
  withTablature,
  words,
} from '../score/create-score.ts';
import type { Part, PartBar, ScoreBar, ScoreEvent } from '../score/score.ts';
import { scoreToMusicXml } from './score-to-musicxml.ts';

const fourFour = createMetre(4, 4);
const key = fifthsToKey(0, 'major');
const [eighth, quarter, half, whole] = [fraction(1, 8), fraction(1, 4), fraction(1, 2), fraction(1)];
const pitch = (text: string) => written(present(parsePitch(text), text));
const instrument = (id: string) => present(findInstrument(id), id);

function chord(text: string) {
  const read = parseChord(text);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
}

function write(
  bars: readonly PartBar[],
  marks: { id?: string; frame?: readonly Partial<ScoreBar>[]; part?: Partial<Part> } = {},
): string {
  const frame = bars.map((_, i) => scoreBar(i + 1, fourFour, marks.frame?.[i] ?? {}));
  const only = { ...part(instrument(marks.id ?? 'flute'), bars), ...marks.part };
  return scoreToMusicXml(createScore({ bars: frame, parts: [only] }));
}
const bar = (events: readonly ScoreEvent[], more: Partial<Omit<PartBar, 'voices'>> = {}) =>
  partBar({ key, ...more }, events);
const measures = (xml: string) => xml.match(/<measure [\s\S]*?<\/measure>/g) ?? [];

test('key, metre and clef stand once and again where they change', () => {
  const three = createMetre(3, 4);
  const xml = write(
    [bar([barRest(whole)]), bar([barRest(whole)]), bar([barRest(fraction(3, 4))], { clefs: ['bass'] })],
    {
      frame: [{}, {}, { metre: three, length: fraction(3, 4) }],
    },
  );
  const attributes = measures(xml).map((m) => (m.match(/<(divisions|key|time|clef)>/g) ?? []).join(''));
  expect(attributes).toEqual(['<divisions><key><time><clef>', '', '<time><clef>']);
});

test('a clef inside a bar stands before its note and holds into the next bar', () => {
  const half = fraction(1, 2);
  const two = [note(pitch('C4'), half), note(pitch('C5'), half)];
  const change = { at: half, staff: 1, clef: 'treble' } as const;
  const xml = write(
    [
      bar(two, { clefs: ['bass'], clefChanges: [change] }),
      bar(two, { clefs: ['treble'] }),
      bar(two, { clefs: ['bass'] }),
    ],
    { id: 'cello' },
  );
  const order = measures(xml).map((m) => (m.match(/<sign>.|<octave>\d/g) ?? []).join(' '));
  expect(order).toEqual([
    '<sign>F <octave>4 <sign>G <octave>5',
    '<octave>4 <octave>5',
    '<sign>F <octave>4 <octave>5',
  ]);
});

test('a transposing part keeps written pitch and says how it sounds', () => {
  const xml = write([bar([note(pitch('F#5'), whole)])], { id: 'tenor_sax' });
  expect(xml).toContain('<pitch><step>F</step><alter>1</alter><octave>5</octave></pitch>');
  expect(xml).toContain(
    '<transpose><diatonic>-1</diatonic><chromatic>-2</chromatic><octave-change>-1</octave-change></transpose>',
  );
});

test('ties join pitches over the bar line', () => {
  const xml = write([bar([note(pitch('C5'), whole, { isTied: true })]), bar([note(pitch('C5'), whole)])]);
  const [first, second] = measures(xml);
  expect(first).toContain('<tie type="start"/>');
  expect(first).not.toContain('stop');
  expect(second).toContain('<tie type="stop"/>');
  expect(second).toContain('<tied type="stop"/>');
});

test('a chord symbol within a long note is offset from it', () => {
  const chords = [
    chordSymbol(chord('Dm7')),
    chordSymbol(chord('G7b9/B'), half),
    chordSymbol(null, fraction(3, 4)),
  ];
  const xml = write([bar([note(pitch('A4'), fraction(3, 4)), rest(quarter)], { chords })]);
  expect(xml).toContain('<divisions>1</divisions>');
  expect(
    xml
      .match(/<harmony[\s\S]*?<\/harmony>|<note>/g)
      ?.map((x) => x.match(/<offset>(\d)/)?.[1] ?? x.slice(1, 8)),
  ).toEqual(['harmony', '2', 'note>', 'harmony', 'note>']);
  expect(xml).toContain('<kind text="7♭9">dominant</kind><bass><bass-step>B</bass-step></bass>');
  expect(xml).toContain('<kind text="N.C.">none</kind>');
});

test('repeats and endings', () => {
  const frame = [
    { repeatStart: true },
    { ending: 1, repeatEnd: true },
    { ending: 2 },
    { barline: 'final' as const },
  ];
  const xml = write(
    frame.map(() => bar([barRest(whole)])),
    { frame },
  );
  const barlines = measures(xml).map((m) =>
    (m.match(/<(repeat|ending) [^>]*>|<bar-style>[^<]*/g) ?? []).map((x) =>
      x.replace(/[<>/"]|bar-style/g, ''),
    ),
  );
  expect(barlines).toEqual([
    ['heavy-light', 'repeat direction=forward'],
    ['ending number=1 type=start', 'light-heavy', 'ending number=1 type=stop', 'repeat direction=backward'],
    ['ending number=2 type=start', 'ending number=2 type=discontinue'],
    ['light-heavy'],
  ]);
});

test('tempo counts crotchets for players and its own unit for readers; swing is 2 to 1', () => {
  const tempo = tempoMark(60, { type: 'quarter', dots: 1 }, 'Gently');
  const xml = write([bar([barRest(whole)])], { frame: [{ tempo, swing: swingMark(), section: 'A' }] });
  expect(xml).toContain('<beat-unit>quarter</beat-unit><beat-unit-dot/><per-minute>60</per-minute>');
  expect(xml).toContain(
    '<sound tempo="90"><swing><first>2</first><second>1</second><swing-type>eighth</swing-type></swing></sound>',
  );
  expect(xml).toContain('<words font-weight="bold">Gently, Swing</words>');
  expect(xml).toContain('<rehearsal enclosure="rectangle">A</rehearsal>');
});

test('a triplet without a beam over all of it has a bracket', () => {
  const ratio = { actual: 3, normal: 2 };
  const beamed = tuplet(
    ratio,
    [1, 2, 3].map(() => note(pitch('C5'), eighth)),
  );
  const loose = tuplet(ratio, [note(pitch('C5'), quarter), note(pitch('D5'), eighth)]);
  const xml = write([bar([...beamed, ...loose, rest(half)])]);
  expect(xml.match(/<tuplet type="start"[^>]*>/g)).toEqual([
    '<tuplet type="start" number="1" bracket="no"/>',
    '<tuplet type="start" number="1" bracket="yes"/>',
  ]);
  expect(xml).toContain('<actual-notes>3</actual-notes><normal-notes>2</normal-notes>');
  expect(xml).toContain('<divisions>3</divisions>');
});

test('marks of the hand stand in the order of the schema', () => {
  const marks = {
    fingering: '2',
    pluck: 'm',
    string: 3,
    fret: 2,
    articulations: ['accent', 'up-bow'] as const,
  };
  const xml = write([bar([note(pitch('A4'), whole, { ...marks, lyric: 'la', slur: null })])], {
    id: 'guitar',
  });
  expect(xml).toContain(
    '<technical><fingering>2</fingering><pluck>m</pluck><string>3</string><fret>2</fret></technical>',
  );
  expect(xml).toContain('<accent/>');
  expect(xml).toContain('<up-bow/>');
  expect(xml).toContain('<text>la</text>');
});

test('slashes sit on the middle line of the clef, without stem unless they carry a rhythm', () => {
  const events = [slash(half), slash(half, { hasStem: true })];
  const xml = write([partBar({ key: fifthsToKey(-3, 'major'), clefs: ['bass'] }, events)]);
  expect(xml.match(/<step>D<\/step><octave>3<\/octave>/g)?.length).toBe(2);
  expect(xml.match(/<stem>none<\/stem>/g)?.length).toBe(1);
  expect(xml.match(/<notehead>slash<\/notehead>/g)?.length).toBe(2);
});

test('a rhythm on one line has no key, and its sounds are declared', () => {
  const xml = write([bar([hit(whole)], { clefs: ['percussion'] })], { part: { staves: ['one-line'] } });
  expect(xml).toContain('<staff-lines>1</staff-lines>');
  expect(xml).not.toContain('<key>');
  expect(xml).toContain('<score-instrument id="P1-D77">');
  expect(xml).toContain('<instrument id="P1-D77"/>');
  expect(xml).toContain('<midi-unpitched>78</midi-unpitched>');
});

test('tablature repeats the notes by string and fret on a staff of its own', () => {
  const guitar = part(instrument('guitar'), [
    bar([note(pitch('E4'), whole, { string: 4, fret: 2, fingering: '2' })]),
  ]);
  const xml = scoreToMusicXml(createScore({ bars: [scoreBar(1, fourFour)], parts: [withTablature(guitar)] }));
  expect(xml).toContain('<staves>2</staves>');
  expect(xml).toContain('<sign>TAB</sign>');
  expect(xml.match(/<staff-tuning /g)?.length).toBe(6);
  expect(xml.match(/<fret>2<\/fret>/g)?.length).toBe(2);
  expect(xml.match(/<fingering>/g)?.length).toBe(1);
});

test('at most four bars to a system, evenly; a pickup rides along and a section starts afresh', () => {
  const numbers = [0, 1, 2, 3, 4, 5, 6, 7];
  const bars = numbers.map((n) =>
    scoreBar(n, fourFour, {
      ...(n === 0 ? { length: quarter } : {}),
      section: n === 1 ? 'A' : n === 6 ? 'B' : null,
    }),
  );
  const music = bars.map(({ length }) => bar([barRest(length)]));
  const score = withSystems(createScore({ bars, parts: [part(instrument('flute'), music)] }), 4);
  expect(score.bars.filter(({ startsSystem }) => startsSystem).map(({ number }) => number)).toEqual([
    0, 4, 6,
  ]);
  expect(scoreToMusicXml(score).match(/new-system="yes"/g)?.length).toBe(2);
});

test('text is escaped', () => {
  const xml = write([bar([barRest(whole)], { directions: [words('<your turn> & mine')] })]);
  expect(xml).toContain('&lt;your turn&gt; &amp; mine');
});
