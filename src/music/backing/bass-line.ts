// Bass lines. Walking: the root (or the bass of a slash chord) where a chord begins, chord tones and steps between, and
// before the next chord a note that leads into it: a semitone above or below, a step of the chord, or its fifth. Other
// feels have figures of roots and fifths. Common practice, no source.

import { present, type Random, randomInteger } from '#core';
import type { Chord } from '../chord/chord.ts';
import type { SoundingChord } from './arrangement.ts';
import { bassClass, nearestMidi, toneClasses } from './chord-sound.ts';
import type { FeelId } from './feel.ts';

/** The lowest and highest note of a bass line: the open low string to an octave and a half above. */
export const bassCompass = { low: 28, high: 50 } as const;
const middle = 38;

export interface LineNote {
  /** Ticks after the chord's start. */
  readonly at: number;
  readonly ticks: number;
  readonly midi: number;
  /** 0 soft to 1 strong. */
  readonly accent: number;
}

/** What a bass figure needs to know at one chord. */
interface Place {
  readonly chord: Chord;
  readonly ticks: number;
  readonly beat: number;
  readonly offBeat: number;
  readonly from: number;
  /** The bass of what comes next, or null at the end. */
  readonly next: number | null;
  readonly random: Random;
}

const inCompass = (midi: number): number => {
  let note = midi;
  while (note < bassCompass.low) note += 12;
  while (note > bassCompass.high) note -= 12;
  return note;
};

/** The root nearest to where the line is, drawn towards the middle of the compass. */
const rootFor = (pitchClass: number, from: number) =>
  inCompass(nearestMidi(pitchClass, Math.round((2 * from + middle) / 3)));

/** A line through the chords of a stretch without a break. `from` is the last note before it, or null. */
export function bassLine(
  chords: readonly SoundingChord[],
  feel: FeelId,
  beat: number,
  offBeat: number,
  from: number | null,
  random: Random,
): readonly (readonly LineNote[])[] {
  let last = from ?? middle;
  return chords.map(({ chord, ticks }, at) => {
    if (chord === null) return [];
    const next = chords[at + 1]?.chord ?? null;
    const notes = figureOf(feel)({
      chord,
      ticks,
      beat,
      offBeat,
      from: last,
      next: next === null ? null : bassClass(next),
      random,
    });
    last = notes.at(-1)?.midi ?? last;
    return notes;
  });
}

function figureOf(feel: FeelId): (place: Place) => readonly LineNote[] {
  switch (feel) {
    case 'swing':
      return walk;
    case 'two-feel':
    case 'ballad':
      return inTwo;
    case 'waltz':
      return waltz;
    case 'shuffle':
      return shuffle;
    case 'bossa':
      return bossa;
    case 'son':
    case 'rumba':
      return tumbao;
    case 'straight':
      return dotted;
    case 'six-eight':
      return inSix;
    case 'rock':
      return quavers;
  }
}

const note = (at: number, ticks: number, midi: number, accent = 0.6): LineNote => ({
  at,
  ticks,
  midi,
  accent,
});

/** The fifth, or what stands for it in the chord. */
const fifthOf = ({ chord }: Place): number => {
  const tones = toneClasses(chord);
  return present(tones[2] ?? tones[1] ?? tones[0], 'a chord has tones');
};

/** A note that leads into the next chord from where the line is. */
function leadInto(place: Place, from: number): number {
  const { chord, next, random } = place;
  if (next === null) return inCompass(nearestMidi(fifthOf(place), from));
  const goal = rootFor(next, from);
  const tones = toneClasses(chord);
  const above = goal + 1;
  const below = goal - 1;
  const fifth = inCompass(nearestMidi((next + 7) % 12, goal));
  // From above the line comes down into the goal, from below it goes up.
  const sorted = from > goal ? [above, below] : [below, above];
  const steps = [goal + 2, goal - 2].filter((midi) => tones.includes(((midi % 12) + 12) % 12));
  const options = [...sorted.slice(0, 1), ...sorted, ...steps, fifth].filter(
    (midi) => midi >= bassCompass.low && midi <= bassCompass.high && midi !== from,
  );
  return options[randomInteger(random, 0, Math.max(0, options.length - 1))] ?? inCompass(below);
}

/** Notes between a start and the leading note: chord tones in one direction, filled by steps where they lie far apart. */
function passage(place: Place, start: number, count: number): readonly number[] {
  const { chord, next, random } = place;
  const tones = toneClasses(chord);
  const goal = next === null ? middle : rootFor(next, start);
  let up = goal === start ? random.next() < 0.5 : goal > start;
  const line: number[] = [];
  let at = start;
  for (let n = 0; n < count; n++) {
    if (at + (up ? 3 : -3) > bassCompass.high || at + (up ? 3 : -3) < bassCompass.low) up = !up;
    const candidates = [1, 2, 3, 4, 5, 7]
      .map((step) => (up ? at + step : at - step))
      .filter((midi) => midi >= bassCompass.low && midi <= bassCompass.high && tones.includes(midi % 12));
    const chosen = candidates[random.next() < 0.75 ? 0 : Math.min(1, candidates.length - 1)];
    at = chosen ?? inCompass(nearestMidi(present(tones[0], 'a root'), at));
    line.push(at);
    if (random.next() < 0.2) up = !up;
  }
  return line;
}

const walk = (place: Place): readonly LineNote[] => {
  const beats = Math.max(1, Math.round(place.ticks / place.beat));
  const root = rootFor(bassClass(place.chord), place.from);
  if (beats === 1) return [note(0, place.ticks, root, 0.8)];
  const inner = passage(place, root, beats - 2);
  const lead = leadInto(place, inner.at(-1) ?? root);
  const line = [root, ...inner, lead].map((midi, at) =>
    note(at * place.beat, Math.round(place.beat * 0.92), midi, at === 0 ? 0.8 : at % 2 === 1 ? 0.7 : 0.6),
  );
  // Now and then a skipped quaver before a beat keeps the line walking.
  if (beats >= 4 && place.random.next() < 0.15) {
    const at = 2 * place.beat + place.offBeat;
    const before = present(line[2], 'the third beat');
    return [
      ...line.slice(0, 3).map((n) => (n === before ? { ...n, ticks: place.offBeat - 30 } : n)),
      note(at, place.beat - place.offBeat, before.midi, 0.35),
      ...line.slice(3),
    ];
  }
  return line;
};

const inTwo = (place: Place): readonly LineNote[] => {
  const beats = Math.max(1, Math.round(place.ticks / place.beat));
  const root = rootFor(bassClass(place.chord), place.from);
  if (beats < 4) return [note(0, place.ticks - 20, root, 0.75)];
  const fifth = inCompass(nearestMidi(fifthOf(place), root + (root > middle ? -5 : 7)));
  const line: LineNote[] = [];
  for (let at = 0; at + 2 <= beats; at += 2)
    line.push(
      note(at * place.beat, 2 * place.beat - 40, at % 4 === 0 ? root : fifth, at % 4 === 0 ? 0.75 : 0.6),
    );
  if (place.next !== null && place.random.next() < 0.4) {
    const last = present(line.pop(), 'a last minim');
    const lead = leadInto(place, last.midi);
    line.push({ ...last, ticks: place.beat - 30 }, note(last.at + place.beat, place.beat - 30, lead, 0.5));
  }
  return line;
};

const waltz = (place: Place): readonly LineNote[] => {
  const beats = Math.max(1, Math.round(place.ticks / place.beat));
  const root = rootFor(bassClass(place.chord), place.from);
  if (beats < 3) return [note(0, place.ticks - 20, root, 0.75)];
  if (place.random.next() < 0.55) return [note(0, place.ticks - 40, root, 0.8)];
  const [second = root] = passage(place, root, 1);
  return [
    note(0, place.beat - 30, root, 0.8),
    note(place.beat, place.beat - 30, second, 0.55),
    note(2 * place.beat, place.ticks - 2 * place.beat - 30, leadInto(place, second), 0.55),
  ];
};

/** Root, third, fifth, sixth and back, in long and short quavers where there is a whole bar. */
const shuffle = (place: Place): readonly LineNote[] => {
  const beats = Math.max(1, Math.round(place.ticks / place.beat));
  const root = rootFor(bassClass(place.chord), place.from);
  const [, third = 0, fifth = 0] = toneClasses(place.chord);
  const figure = [
    root,
    inCompass(nearestMidi(third, root + 4)),
    inCompass(nearestMidi(fifth, root + 7)),
    inCompass(nearestMidi(third, root + 4)),
  ];
  return Array.from({ length: beats }, (_, at) => {
    const midi =
      at === beats - 1 && beats > 1 ? leadInto(place, root) : present(figure[at % 4], 'a figure of four');
    return [
      note(at * place.beat, place.offBeat - 20, midi, at % 2 === 0 ? 0.75 : 0.65),
      note(at * place.beat + place.offBeat, place.beat - place.offBeat - 15, midi, 0.4),
    ];
  }).flat();
};

/** Root and fifth in dotted crotchets and quavers; the quaver leads on. */
const bossa = (place: Place): readonly LineNote[] => {
  const root = rootFor(bassClass(place.chord), place.from);
  const fifth = inCompass(nearestMidi(fifthOf(place), root + (root > middle ? -5 : 7)));
  const half = 2 * place.beat;
  const line: LineNote[] = [];
  for (let at = 0; at < place.ticks; at += half) {
    const main = (at / half) % 2 === 0 ? root : fifth;
    const other = (at / half) % 2 === 0 ? fifth : root;
    const room = Math.min(half, place.ticks - at);
    if (room < half) line.push(note(at, room - 20, main, 0.7));
    else
      line.push(
        note(at, 1.5 * place.beat - 20, main, 0.75),
        note(at + 1.5 * place.beat, place.beat / 2 - 15, other, 0.5),
      );
  }
  return line;
};

/** Root, then the fifth on the second off-beat and the octave on the fourth beat, held over. */
const tumbao = (place: Place): readonly LineNote[] => {
  const root = rootFor(bassClass(place.chord), place.from);
  const bar = 4 * place.beat;
  const line: LineNote[] = [];
  for (let at = 0; at < place.ticks; at += bar) {
    if (place.ticks - at < bar) {
      line.push(note(at, place.ticks - at - 20, root, 0.75));
      continue;
    }
    const fifth = inCompass(nearestMidi(fifthOf(place), root + (root > middle ? -5 : 7)));
    const isLast = at + bar >= place.ticks;
    line.push(
      note(at, 1.5 * place.beat - 20, root, 0.7),
      note(at + 1.5 * place.beat, 1.5 * place.beat - 20, fifth, 0.75),
      note(at + 3 * place.beat, place.beat - 20, isLast ? leadInto(place, fifth) : root, 0.65),
    );
  }
  return line;
};

/** Even dotted crotchets, three of them filled to a bar: root, fifth, root. */
const dotted = (place: Place): readonly LineNote[] => {
  const root = rootFor(bassClass(place.chord), place.from);
  const fifth = inCompass(nearestMidi(fifthOf(place), root + (root > middle ? -5 : 7)));
  const line: LineNote[] = [];
  const starts = [0, 1.5, 3].map((beats) => beats * place.beat);
  for (let at = 0; at < place.ticks; at += 4 * place.beat)
    starts.forEach((start, nth) => {
      const from = at + start;
      const to = Math.min(place.ticks, at + (starts[nth + 1] ?? 4 * place.beat));
      if (from < place.ticks)
        line.push(note(from, to - from - 20, nth === 1 ? fifth : root, nth === 0 ? 0.75 : 0.6));
    });
  return line;
};

const inSix = (place: Place): readonly LineNote[] => {
  const root = rootFor(bassClass(place.chord), place.from);
  const fifth = inCompass(nearestMidi(fifthOf(place), root + (root > middle ? -5 : 7)));
  const line: LineNote[] = [];
  for (let at = 0; at < place.ticks; at += place.beat) {
    const room = Math.min(place.beat, place.ticks - at);
    line.push(note(at, room - 30, (at / place.beat) % 2 === 0 ? root : fifth, 0.75));
  }
  return line;
};

/** Even quavers on the root, the last one or two leading on. */
const quavers = (place: Place): readonly LineNote[] => {
  const root = rootFor(bassClass(place.chord), place.from);
  const half = place.beat / 2;
  const count = Math.max(1, Math.round(place.ticks / half));
  const leads = place.next !== null && count >= 8 && place.random.next() < 0.5;
  return Array.from({ length: count }, (_, at) =>
    note(
      at * half,
      half - 15,
      leads && at === count - 1 ? leadInto(place, root) : root,
      at % 2 === 0 ? 0.75 : 0.6,
    ),
  );
};
