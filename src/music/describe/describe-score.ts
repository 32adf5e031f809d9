// Score → plain text for a screen reader: what the sheet is, then bar by bar what changes, what stands over the music, and
// the music itself, in one order throughout.

import type { Chord } from '../chord/chord.ts';
import { compare, type Fraction, fraction, plus, zero } from '../fraction/fraction.ts';
import { formatKey, type Key, keyFifths } from '../key/key.ts';
import { formatMetre, type Metre } from '../rhythm/metre.ts';
import { beatUnits } from '../rhythm/metre-tree.ts';
import { barOffsets } from '../score/bar-places.ts';
import type { Direction, Part, PartBar, Score, ScoreBar, ScoreEvent, TempoMark } from '../score/score.ts';
import { eventsInWords, nameInWords, valueInWords } from './describe-events.ts';
import { barWords, clefWords, dynamicWords, type NoteNaming } from './score-words.data.ts';

/** `G major, one sharp` */
function keyInWords(key: Key): string {
  const fifths = keyFifths(key);
  const count = Math.abs(fifths);
  const signs =
    fifths === 0 ? 'no sharps or flats' : `${count} ${fifths > 0 ? 'sharp' : 'flat'}${count > 1 ? 's' : ''}`;
  return `${nameInWords(key.tonic)} ${key.mode}, ${signs}`;
}

/** `A minor 7 flat 5 over E flat`: the quality's own name. */
function chordInWords(chord: Chord | null): string {
  if (chord === null) return 'no chord';
  const quality = chord.quality.id.replaceAll('_', ' ').replace(/(flat|sharp)(?=\d)/g, '$1 ');
  const bass = chord.bass === null ? '' : ` over ${nameInWords(chord.bass)}`;
  return `${nameInWords(chord.root)} ${quality}${bass}`;
}

function tempoInWords({ unit, perMinute, text, isFigureShown }: TempoMark, naming: NoteNaming): string {
  const figure = `${valueInWords(unit, naming)} = ${perMinute}`;
  return [text, isFigureShown ? figure : null].filter((part) => part !== null).join(', ');
}

/** Where in the bar: `beat 3`, or `after beat 2` off the beat. */
function beatInWords(metre: Metre, at: Fraction): string {
  let start = zero;
  let beat = 0;
  let isOn = true;
  for (const units of beatUnits(metre)) {
    if (compare(start, at) > 0) break;
    beat++;
    isOn = compare(start, at) === 0;
    start = plus(start, fraction(units, metre.unit));
  }
  return `${isOn ? 'beat' : 'after beat'} ${beat}`;
}

function directionInWords(direction: Direction): string {
  switch (direction.kind) {
    case 'words':
      return `“${direction.text}”`;
    case 'dynamic':
      return dynamicWords[direction.mark];
    case 'hairpin':
      return direction.shape === 'crescendo' ? 'getting louder' : 'getting quieter';
    case 'hairpin-end':
      return 'end of the hairpin';
    case 'octave-up':
      return 'drawn an octave lower (8va)';
    case 'octave-end':
      return 'drawn as it sounds again';
    case 'pedal':
      return direction.foot === 'down' ? 'pedal down' : 'pedal up';
  }
}

/** Tablature under a staff says the same again. */
const isTold = (part: Part, staff: number) => part.staves.length === 1 || part.staves[staff] !== 'tablature';

/** What each staff is called; empty where only one is told. */
function staffNames(part: Part): readonly string[] {
  const told = part.staves.filter((_, i) => isTold(part, i)).length;
  if (told < 2) return part.staves.map(() => '');
  return part.staves.map((_, i) => (told > 2 ? `staff ${i + 1}` : i === 0 ? 'upper staff' : 'lower staff'));
}

/** What the bar changes or opens, in the frame all parts share. */
function frameInWords(score: Score, index: number, naming: NoteNaming): readonly string[] {
  const bar = score.bars[index];
  if (bar === undefined) return [];
  const before = score.bars[index - 1];
  const hasChanged =
    before !== undefined && !before.isFree && formatMetre(before.metre) !== formatMetre(bar.metre);
  return [
    bar.section === null ? '' : `section ${bar.section}`,
    bar.repeatStart ? 'repeat starts' : '',
    bar.ending === null ? '' : `ending ${bar.ending}`,
    hasChanged ? `now ${formatMetre(bar.metre)}` : '',
    index > 0 && bar.tempo !== null ? tempoInWords(bar.tempo, naming) : '',
    index > 0 && bar.swing !== null ? (bar.swing.text ?? '') : '',
  ].filter((words) => words !== '');
}

function barInWords(
  part: Part,
  bar: PartBar,
  before: PartBar | undefined,
  frame: ScoreBar,
  offset: Fraction,
  naming: NoteNaming,
): string {
  const beatOf = (at: Fraction) => beatInWords(frame.metre, plus(at, offset));
  const names = staffNames(part);
  const clefs = bar.clefs.flatMap((clef, i) => {
    const changes = before?.clefChanges.filter(({ staff }) => staff === i + 1) ?? [];
    const held = changes.at(-1)?.clef ?? before?.clefs[i];
    return held === undefined || held === clef ? [] : [`${names[i]} now ${clefWords[clef]}`.trim()];
  });
  const laterClefs = bar.clefChanges.map(({ at, staff, clef }) =>
    `${names[staff - 1]} ${clefWords[clef]} from ${beatOf(at)}`.trim().replace('from after', 'after'),
  );
  const changes = [
    before !== undefined && formatKey(before.key) !== formatKey(bar.key) ? `now ${keyInWords(bar.key)}` : '',
    ...clefs,
    ...laterClefs,
  ].filter((words) => words !== '');
  const chords = bar.chords.map(({ at, chord }) =>
    `${chordInWords(chord)} on ${beatOf(at)}`.replace('on after', 'after'),
  );
  const directions = bar.directions.map((d) =>
    frame.isFree
      ? directionInWords(d)
      : `${directionInWords(d)} at ${beatOf(d.at)}`.replace('at after', 'after'),
  );
  const lastOf = (id: number): ScoreEvent | undefined =>
    before?.voices.find((voice) => voice.id === id)?.events.at(-1);
  const music = part.staves.flatMap((_, s) => {
    if (!isTold(part, s)) return [];
    const name = names[s] === '' ? '' : `${names[s]}: `;
    const voices = bar.voices.filter((voice) => voice.staff === s + 1);
    if (voices.length === 0) return [`${name}${barWords[naming]} of rest`];
    return voices.map((voice, v) => {
      const which = voices.length === 1 ? '' : `voice ${v + 1}: `;
      return `${name}${which}${eventsInWords(voice.events, lastOf(voice.id), naming)}`;
    });
  });
  return [
    changes.join(', '),
    chords.length === 0 ? '' : `Chords: ${chords.join(', ')}`,
    directions.join(', '),
    ...music,
  ]
    .filter((words) => words !== '')
    .map(withCapital)
    .join('. ');
}

const withCapital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function headingOf(score: Score, naming: NoteNaming): readonly string[] {
  const [opening] = score.bars;
  const first = score.bars.find(({ isFree }) => !isFree) ?? opening;
  const lines = [
    [score.title, score.subtitle, score.credit].filter((text) => text !== null && text !== '').join('. '),
  ];
  for (const part of score.parts) {
    const bar = part.bars[0];
    if (bar === undefined) continue;
    const hasKey = part.staves.some((staff) => staff !== 'one-line');
    const facts = [
      part.name === '' ? part.instrument.name : part.name,
      bar.clefs.map((clef) => clefWords[clef]).join(' over '),
      hasKey ? keyInWords(bar.key) : '',
    ];
    lines.push(
      facts
        .filter((fact) => fact !== '')
        .map(withCapital)
        .join('. '),
    );
  }
  if (first !== undefined) {
    const count = score.bars.filter(({ number }) => number > 0).length;
    const facts = [
      formatMetre(first.metre),
      opening?.tempo == null ? '' : tempoInWords(opening.tempo, naming),
      opening?.swing?.text ?? '',
      `${count} ${barWords[naming]}${count === 1 ? '' : 's'}`,
      first.number === 0 ? 'begins with a pickup' : '',
    ];
    lines.push(
      facts
        .filter((fact) => fact !== '')
        .map(withCapital)
        .join('. '),
    );
  }
  return lines.filter((line) => line !== '').map((line) => `${line}.`);
}

/**
 * The score in words, a line for each bar (and part, where there are several), after a few lines on the whole. A bar like
 * the one before says so. `Bar 1: section A. Chords: A minor 7 on beat 1. Quavers C 4, D 4; crotchet E 4.`
 */
export function describeScore(score: Score, naming: NoteNaming = 'british'): string {
  const offsets = barOffsets(score.bars);
  const lines = [...headingOf(score, naming)];
  const said = score.parts.map(() => '');
  score.bars.forEach((frame, i) => {
    const plain = `${withCapital(barWords[naming])} ${frame.number}`;
    const name = frame.isFree ? 'Free notes' : frame.number === 0 ? 'Pickup' : plain;
    const opening = frameInWords(score, i, naming).join(', ');
    const closing = frame.repeatEnd ? ' Repeat.' : i === score.bars.length - 1 ? ' End.' : '';
    score.parts.forEach((part, p) => {
      const bar = part.bars[i];
      if (bar === undefined) return;
      const text = barInWords(part, bar, part.bars[i - 1], frame, offsets[i] ?? zero, naming);
      const isAgain = text === said[p] && text !== '';
      said[p] = text;
      const who = score.parts.length === 1 ? '' : `, ${part.name === '' ? `part ${p + 1}` : part.name}`;
      const body = isAgain ? 'The same again' : text;
      const start = p === 0 && opening !== '' ? `${withCapital(opening)}. ` : '';
      lines.push(`${name}${who}: ${start}${body}.${p === score.parts.length - 1 ? closing : ''}`);
    });
  });
  return lines.join('\n');
}
