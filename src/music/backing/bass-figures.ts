// What the bass plays on one chord, by feel: walking, in two, or a figure of root and fifth. Common practice, no source.

import { modulo, present } from '#core';
import { type BassPlace, bassCompass, inBassCompass, type LineNote } from './bass-place.ts';
import { nearestMidi, toneClasses } from './chord-sound.ts';
import type { FeelId } from './feel.ts';
import { leadFrom, walkingNotes } from './walking.ts';

type Figure = (place: BassPlace) => readonly LineNote[];

/** The notes of a chord in a feel. */
export function bassFigure(feel: FeelId, place: BassPlace): readonly LineNote[] {
  return figures[feel](place);
}

const note = (at: number, ticks: number, midi: number, accent = 0.6): LineNote => ({
  at,
  ticks,
  midi,
  accent,
});
const beatsOf = ({ ticks, beat }: BassPlace) => Math.max(1, Math.round(ticks / beat));

/** The fifth, or what stands for it in the chord, below the root where there is room. */
function fifthOf({ chord, root }: BassPlace): number {
  const tones = toneClasses(chord);
  const fifth = present(tones[2] ?? tones[1] ?? tones[0], 'a chord has tones');
  const below = nearestMidi(fifth, root - 5);
  return below >= bassCompass.low ? below : inBassCompass(nearestMidi(fifth, root + 7));
}

const walk: Figure = (place) => {
  const beats = beatsOf(place);
  if (beats === 1) return [note(0, place.ticks - 20, place.root, 0.8)];
  const line = walkingNotes(place, beats).map((midi, at) =>
    note(at * place.beat, Math.round(place.beat * 0.94), midi, at === 0 ? 0.78 : at % 2 === 1 ? 0.7 : 0.64),
  );
  // Now and then a skipped quaver before a beat keeps the line walking.
  if (beats < 4 || place.random.next() > 0.06 + 0.2 * place.intensity) return line;
  const third = present(line[2], 'the third beat');
  return [
    ...line.map((one) => (one === third ? { ...one, ticks: place.offBeat - 20 } : one)),
    note(2 * place.beat + place.offBeat, place.beat - place.offBeat, third.midi, 0.35),
  ].toSorted((a, b) => a.at - b.at);
};

/** Minims: root and fifth, or a crotchet that leads on. */
const inTwo: Figure = (place) => {
  const { root, beat, goal } = place;
  const beats = beatsOf(place);
  if (beats < 4) return [note(0, place.ticks - 20, root, 0.75)];
  const fifth = fifthOf(place);
  const leads = goal !== null && place.random.next() < 0.25 + 0.3 * place.intensity;
  if (!leads) return [note(0, 2 * beat - 30, root, 0.75), note(2 * beat, 2 * beat - 30, fifth, 0.62)];
  return [
    note(0, 2 * beat - 30, root, 0.75),
    note(2 * beat, beat - 25, fifth, 0.62),
    note(3 * beat, beat - 25, leadFrom(place, fifth), 0.55),
  ];
};

const waltz: Figure = (place) => {
  const beats = beatsOf(place);
  if (beats < 3) return [note(0, place.ticks - 20, place.root, 0.75)];
  if (place.random.next() < 0.75 - 0.6 * place.intensity) return [note(0, place.ticks - 40, place.root, 0.8)];
  return walkingNotes(place, 3).map((midi, at) =>
    note(at * place.beat, place.beat - 30, midi, at === 0 ? 0.8 : 0.58),
  );
};

/** Root, third, fifth, sixth in long and short quavers; the last beat may lead on. */
const shuffle: Figure = (place) => {
  const { root, beat, offBeat, chord, goal } = place;
  const beats = beatsOf(place);
  const [, third = 0, fifth = 0, seventh] = toneClasses(chord);
  // A minor chord keeps its seventh where a major one has its sixth.
  const isMinor = modulo(third - root, 12) === 3;
  const top = isMinor && seventh !== undefined ? seventh : (root + 9) % 12;
  const above = (tone: number) => {
    const midi = root + modulo(tone - root, 12);
    return midi <= bassCompass.high ? midi : midi - 12;
  };
  const rising = [root, above(third), above(fifth), above(top)];
  const leads = goal !== null && goal % 12 !== root % 12 && beats > 1;
  return Array.from({ length: beats }, (_, at) => {
    const isLead = leads && at === beats - 1;
    const midi = isLead
      ? leadFrom(place, rising[(at - 1) % 4] ?? root)
      : present(rising[at % 4], 'a figure of four');
    return [
      note(at * beat, offBeat - 25, midi, at % 2 === 0 ? 0.75 : 0.66),
      note(at * beat + offBeat, beat - offBeat - 15, midi, 0.42),
    ];
  }).flat();
};

/** Root and fifth in dotted crotchets, each followed by a quaver; the last quaver is already the next root. */
const bossa: Figure = (place) => {
  const { root, beat, goal, ticks } = place;
  const fifth = fifthOf(place);
  const half = 2 * beat;
  const line: LineNote[] = [];
  for (let at = 0, nth = 0; at < ticks; at += half, nth++) {
    const main = nth % 2 === 0 ? root : fifth;
    const room = Math.min(half, ticks - at);
    const isLast = at + half >= ticks;
    const next = isLast ? (goal ?? root) : fifth;
    if (room < half) line.push(note(at, room - 20, main, 0.7));
    else line.push(note(at, 1.5 * beat - 15, main, 0.74), note(at + 1.5 * beat, beat / 2 - 25, next, 0.48));
  }
  return line;
};

/**
 * Fifth on the second off-beat, and on the fourth beat the root of the bar to come, held over its first beat. A chord that
 * nothing leads into begins on its beat; one in the second half of a bar comes a quaver early, in place of the fifth.
 */
const tumbao: Figure = (place) => {
  const { root, beat, ticks, goal, isLedInto } = place;
  const isWhole = ticks >= 4 * beat;
  const early = isLedInto ? (place.isMidBar ? beat / 2 : beat) : 0;
  const until = (at: number) => (goal === null ? ticks : Math.min(ticks, at)) - 20;
  if (!isWhole) {
    // The next chord comes early by a quaver inside the bar, by a beat over the bar line.
    const end = place.isMidBar ? ticks - beat : ticks - beat / 2;
    return [note(-early, early + until(end), root, 0.72)];
  }
  const first = note(-early, early + 1.5 * beat - 20, root, 0.74);
  return [first, note(1.5 * beat, until(3 * beat) - 1.5 * beat, fifthOf(place), 0.7)];
};

/** Dotted crotchets, three of them filled to a bar: root, fifth, and a crotchet that leads on. */
const dotted: Figure = (place) => {
  const { root, beat, ticks, goal } = place;
  const fifth = fifthOf(place);
  const starts = [0, 1.5, 3].map((beats) => beats * beat).filter((start) => start < ticks);
  return starts.map((start, nth) => {
    const to = Math.min(ticks, starts[nth + 1] ?? ticks);
    const isLead = nth === 2 && goal !== null && goal !== root && place.random.next() < 0.6;
    const midi = isLead ? leadFrom(place, fifth) : nth === 1 ? fifth : root;
    return note(start, to - start - 20, midi, nth === 0 ? 0.75 : 0.6);
  });
};

const inSix: Figure = (place) => {
  const { root, beat, ticks, goal } = place;
  const fifth = fifthOf(place);
  const line: LineNote[] = [];
  for (let at = 0, nth = 0; at < ticks; at += beat, nth++) {
    const room = Math.min(beat, ticks - at);
    const isLast = at + beat >= ticks;
    const main = nth % 2 === 0 ? root : fifth;
    const leads = isLast && room === beat && goal !== null && goal !== root;
    if (leads && place.random.next() < 0.3 + 0.4 * place.intensity) {
      const quaver = Math.round(beat / 3);
      line.push(
        note(at, 2 * quaver - 25, main, 0.72),
        note(at + 2 * quaver, quaver - 20, leadFrom(place, main), 0.5),
      );
    } else line.push(note(at, room - 30, main, nth === 0 ? 0.76 : 0.68));
  }
  return line;
};

/** Even quavers on the root, the last one or two leading on. */
const quavers: Figure = (place) => {
  const { root, beat, ticks, goal } = place;
  const half = beat / 2;
  const count = Math.max(1, Math.round(ticks / half));
  const leads = goal !== null && goal !== root && count >= 4 && place.random.next() < 0.6;
  const lead = leads ? leadFrom(place, root) : root;
  return Array.from({ length: count }, (_, at) =>
    note(at * half, half - 20, at === count - 1 ? lead : root, at % 2 === 0 ? 0.74 : 0.62),
  );
};

const figures: Readonly<Record<FeelId, Figure>> = {
  swing: walk,
  'two-feel': inTwo,
  shuffle,
  straight: dotted,
  bossa,
  son: tumbao,
  rumba: tumbao,
  waltz,
  'six-eight': inSix,
  rock: quavers,
  ballad: inTwo,
};
