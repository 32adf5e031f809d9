// A line over chords: strong beats on chord tones, chord changes crossed by step, approach notes and enclosures that
// resolve, leaps that turn back, one high point a phrase. Rules of line writing over changes are common practice, no source
// (cf. Nettles & Graf 1997, Levine 1995, from memory).

import { present, type Random } from '#core';
import type { Chord } from '../../chord/chord.ts';
import type { WrittenRange } from '../../instrument/instrument.ts';
import type { Key } from '../../key/key.ts';
import { staffStep, type WrittenPitch } from '../../pitch/pitch.ts';
import type { Metre } from '../../rhythm/metre.ts';
import { type ChordSpan, isModal, scaleForChord, spanAt } from '../chart/chord-timeline.ts';
import { cheapestMelody, type MelodyCost, type Trail } from '../melody/cheapest-melody.ts';
import { arch } from '../melody/contour.ts';
import type { Slot } from '../rhythm/beat-figure.ts';
import { barTicks, beatGrid, metricLevel } from '../rhythm/beat-grid.ts';
import { chordKeyText, type LineNote, lineNotes, spellResolutions } from './line-notes.ts';

export type LineContent = 'guide_tones' | 'chord_tones' | 'approach_notes' | 'enclosures' | 'melodic';

export interface LineOptions {
  readonly key: Key;
  readonly metre: Metre;
  readonly spans: readonly ChordSpan[];
  readonly range: WrittenRange;
  readonly content: LineContent;
  /** Largest interval: 5 is a fifth; octaves are allowed where they turn back. */
  readonly leap: number;
  /** Whether notes outside the scale may lead to chord tones. */
  readonly isChromatic: boolean;
  /** Whether each chord begins on its root. */
  readonly fromRoots: boolean;
  /** Pitch classes that certain places, by their ticks, should begin with: where a second line takes another way. */
  readonly entries?: ReadonlyMap<number, number>;
  /** Key numbers the line keeps to; absent for all in the range. */
  readonly among?: ReadonlySet<number>;
  /** For each sounding slot, an earlier one whose movement it takes up; null for none. */
  readonly models: readonly (number | null)[];
  /** The same for movement it keeps away from. */
  readonly contrasts: readonly (number | null)[];
}

interface Place {
  readonly slot: Slot;
  readonly level: number;
  readonly chord: Chord;
  /** Whether another chord begins here. */
  readonly isChange: boolean;
  readonly isLast: boolean;
  readonly isPhraseStart: boolean;
  readonly isPhraseEnd: boolean;
  /** Whether a target follows at once, and whether one has just been. */
  readonly leadsToTarget: boolean;
  readonly followsTarget: boolean;
  readonly notes: readonly LineNote[];
}

interface Choice {
  readonly note: LineNote;
  readonly own: number;
}

/** What stands over no chord is silent; a note that begins there enters with the next chord. */
export function silenceWithoutChord(slots: readonly Slot[], spans: readonly ChordSpan[]): readonly Slot[] {
  const silent = spans.filter(({ chord }) => chord === null);
  if (silent.length === 0) return slots;
  return slots.flatMap((slot): readonly Slot[] => {
    const end = slot.at + slot.length;
    const inside = silent.filter(({ from, to }) => from < end && to > slot.at);
    if (inside.length === 0) return [slot];
    if (slot.tuplet !== null) return [{ ...slot, isRest: true }];
    const borders = inside.flatMap(({ from, to }) => [from, to]).filter((at) => at > slot.at && at < end);
    const starts = [...new Set([slot.at, ...borders])];
    return starts.map((at, i) => ({
      ...slot,
      at,
      length: (starts[i + 1] ?? end) - at,
      isRest: slot.isRest || inside.some(({ from, to }) => from <= at && at < to),
    }));
  });
}

function findPlaces(slots: readonly Slot[], options: LineOptions): readonly Place[] {
  const length = barTicks(options.metre);
  const grid = beatGrid(options.metre);
  const known = new Map<string, readonly LineNote[]>();
  const sounding = slots.filter((slot) => !slot.isRest);
  const key = isModal(options.spans) ? null : options.key;
  const places = sounding.map((slot, i): Place => {
    const span = present(spanAt(options.spans, slot.at), 'a chord over every sound');
    const chord = present(span.chord, 'a chord over every sound');
    const text = chordKeyText(chord);
    const notes = known.get(text) ?? lineNotes(chord, scaleForChord(chord, key).names, options.range);
    known.set(text, notes);
    const before = sounding[i - 1];
    const next = sounding[i + 1];
    const isPhraseStart = before === undefined || before.at + before.length < slot.at;
    return {
      slot,
      level: metricLevel(grid, slot.at % length),
      chord,
      isChange: before === undefined || before.at < span.from,
      isLast: next === undefined,
      isPhraseStart,
      isPhraseEnd: next === undefined || slot.at + slot.length < next.at,
      leadsToTarget: false,
      followsTarget: false,
      notes,
    };
  });
  return places.map((place, i) => {
    const [before, next] = [places[i - 1], places[i + 1]];
    const leadsToTarget = next !== undefined && !place.isPhraseEnd && isTarget(next);
    return {
      ...place,
      leadsToTarget,
      followsTarget: before !== undefined && !place.isPhraseStart && isTarget(before),
    };
  });
}

const isTarget = (place: Place): boolean => place.level <= 1 || place.isChange || place.isPhraseEnd;

/** What a note costs at its place by itself; Infinity where it may not stand. */
function ownCost(note: LineNote, place: Place, options: LineOptions): number {
  const { content, among } = options;
  if (among !== undefined && !among.has(note.midi)) return Number.POSITIVE_INFINITY;
  if (content === 'guide_tones' && !note.isGuide) return Number.POSITIVE_INFINITY;
  if (content === 'chord_tones' && note.role !== 'chord') return Number.POSITIVE_INFINITY;
  const mayLead = options.isChromatic && place.leadsToTarget && !isTarget(place) && place.slot.length <= 48;
  if (note.role === 'approach' && !mayLead) return Number.POSITIVE_INFINITY;
  if (place.isLast && note.role !== 'chord') return Number.POSITIVE_INFINITY;
  const entry = options.entries?.get(place.slot.at);
  let cost = entry === undefined || entry === note.midi % 12 ? 0 : 8;
  if (isTarget(place)) {
    if (note.role !== 'chord')
      return content === 'melodic' && !place.isPhraseEnd ? 3 : Number.POSITIVE_INFINITY;
    if (!note.isGuide && place.isChange && !options.fromRoots) cost += 0.5;
    if (options.fromRoots && place.isChange && !note.isRoot) cost += 5;
  } else if (place.level === 2 && note.role === 'scale') cost += 0.7;
  if (place.isLast && !note.isRoot && !note.isGuide) cost += 1.5;
  if (note.role === 'approach') cost += content === 'melodic' ? 1.2 : 0.3;
  return cost;
}

function choicesFor(
  random: Random,
  places: readonly Place[],
  options: LineOptions,
): readonly (readonly Choice[])[] {
  const low = staffStep(options.range.low);
  const high = staffStep(options.range.high);
  const height = high - low;
  let phrase = { from: 0, to: 0, base: 0, top: 0, peak: 0.5, waves: 0, swing: 0 };
  return places.map((place, i) => {
    if (place.isPhraseStart) {
      const end = places.findIndex((p, j) => j >= i && p.isPhraseEnd);
      const last = present(places[end < 0 ? places.length - 1 : end], 'a last place').slot;
      const base = low + height * (0.15 + 0.35 * random.next());
      const top = Math.min(high, base + height * (0.3 + 0.35 * random.next()));
      const bars = (last.at + last.length - place.slot.at) / barTicks(options.metre);
      phrase = {
        waves: bars * (0.5 + 0.5 * random.next()),
        swing: random.next() < 0.5 ? 2.4 : -2.4,
        from: place.slot.at,
        to: last.at + last.length,
        base,
        top,
        peak: 0.35 + 0.4 * random.next(),
      };
    }
    const share = (place.slot.at - phrase.from) / Math.max(1, phrase.to - phrase.from);
    // Over the arch of the phrase the line dips and rises, a wave for every bar or two.
    const wave =
      options.content === 'guide_tones' ? 0 : phrase.swing * Math.sin(2 * Math.PI * phrase.waves * share);
    const target = phrase.base + (phrase.top - phrase.base) * arch(share, phrase.peak) + wave;
    const pull = options.content === 'guide_tones' ? 0.05 : isTarget(place) ? 0.34 : 0.1;
    const noise = options.content === 'guide_tones' ? 0.1 : 0.9;
    return place.notes.flatMap((note): readonly Choice[] => {
      const own = ownCost(note, place, options);
      if (own === Number.POSITIVE_INFINITY) return [];
      return [{ note, own: own + noise * random.next() + pull * Math.abs(note.step - target) }];
    });
  });
}

const melodicIntervals = [1.6, 0, 0, 0.6, 0.6, 1.4, 2.5, 1.5, 2.6, 2.6, 5, 6, 2.8];
const arpeggioIntervals = [3.5, 0.4, 0.2, 0, 0, 0.1, 0.5, 0.8, 1.2, 1.4, 3, 3.5, 1.8];
const guideIntervals = [0.4, 0, 0, 1.5, 2, 3, 4, 5, 6, 6, 7, 7, 5];

function intervalCost(semitones: number, options: LineOptions): number {
  const table =
    options.content === 'guide_tones'
      ? guideIntervals
      : options.content === 'chord_tones'
        ? arpeggioIntervals
        : melodicIntervals;
  return table[semitones] ?? 6 + 0.3 * semitones;
}

/** An approach note goes on by semitone to a chord tone; a scale note on a weak place goes on by step. */
function resolutionCost(to: LineNote, from: LineNote): number {
  const size = Math.abs(to.midi - from.midi);
  if (from.role === 'approach') return to.role === 'chord' && size === 1 ? 0 : Number.POSITIVE_INFINITY;
  if (from.role === 'scale' && size > 2) return 1.5;
  return 0;
}

/** What lies around a target: before an enclosure's target come its upper and its lower neighbour, in either order. */
function enclosureCost(to: LineNote, from: LineNote, before: LineNote): number {
  const [a, b] = [before.midi - to.midi, from.midi - to.midi];
  const isUpper = (d: number) => d === 1 || d === 2;
  const isLower = (d: number) => d === -1 || d === -2;
  if (isUpper(a) && b === -1) return -2.5;
  if (isUpper(a) && isLower(b)) return -1.6;
  return isLower(a) && isUpper(b) ? -1.8 : 1.5;
}

function leapCost(
  place: Place,
  semitones: number,
  steps: number,
  options: LineOptions,
  to: LineNote,
  from: LineNote,
): number {
  if (place.isPhraseStart) return steps > 8 ? 2 : 0.3 * Math.max(0, steps - 3);
  const isOctave = semitones === 12;
  if (steps + 1 > options.leap && !(isOctave && options.leap >= 5)) return Number.POSITIVE_INFINITY;
  let cost = 0;
  if (semitones > 2 && (to.role !== 'chord' || from.role !== 'chord')) cost += semitones > 4 ? 3 : 1.2;
  if (semitones === 6 || semitones === 10 || semitones === 11) cost += 1.5;
  return cost;
}

/** The steps that a sketch moves to the note which a place is held against; null where it is held against none. */
function moveOf(
  sketch: readonly LineNote[] | null,
  held: readonly (number | null)[],
  at: number,
): number | null {
  const [to, from] = [held[at], held[at - 1]];
  if (sketch === null || to == null || from == null || to !== from + 1) return null;
  return present(sketch[to], 'a note').step - present(sketch[from], 'a note').step;
}

/** What going from note to note costs. */
function lineCost(
  places: readonly Place[],
  models: readonly LineNote[] | null,
  options: LineOptions,
): MelodyCost<Choice> {
  // A motif is heard again, guide tones lie where the chords put them, and few notes to use come back.
  const circles =
    options.models.length > 0 || options.content === 'guide_tones' || options.among !== undefined;
  return {
    first: (to) => to.own,
    step(to, from, at) {
      const place = present(places[at], 'a place');
      const now = to.note.step - from.note.step;
      const model = moveOf(models, options.models, at);
      const other = moveOf(models, options.contrasts, at);
      const cost = to.own + stepCost(place, to.note, from.note, options);
      if (model !== null) return cost + (now === model ? -2.4 : Math.sign(now) === Math.sign(model) ? 0 : 2);
      if (other !== null) return cost + (Math.sign(now) === Math.sign(other) ? 1.5 : 0);
      return cost;
    },
    turn: (to, from, before, at) =>
      turnCost(present(places[at], 'a place'), to.note, from.note, before.note, options),
    ...(circles ? {} : { trail: returnCost }),
  };
}

function stepCost(place: Place, to: LineNote, from: LineNote, options: LineOptions): number {
  const { content } = options;
  const semitones = Math.abs(to.midi - from.midi);
  const cost = leapCost(place, semitones, Math.abs(to.step - from.step), options, to, from);
  if (place.isPhraseStart || cost === Number.POSITIVE_INFINITY) return cost;
  let more = intervalCost(semitones, options) + resolutionCost(to, from);
  if (place.isChange && semitones > 2) more += content === 'guide_tones' ? 1 : 0.6;
  if (place.isChange && content === 'approach_notes')
    more += from.role === 'approach' ? -1.5 : semitones <= 2 ? -0.3 : 1;
  if (content === 'enclosures' && place.followsTarget && !isTarget(place))
    more += semitones >= 3 && to.role === 'chord' ? -0.8 : 0.3;
  return cost + more;
}

function turnCost(
  place: Place,
  to: LineNote,
  from: LineNote,
  before: LineNote,
  options: LineOptions,
): number {
  if (place.isPhraseStart) return 0;
  const { content } = options;
  const move = to.midi - from.midi;
  const last = from.midi - before.midi;
  const isOnward = Math.sign(move) === Math.sign(last);
  let cost = 0;
  if (move === 0 && last === 0) cost += 4;
  if (to.midi === before.midi && move !== 0) cost += 0.9;
  if (Math.abs(last) > 5 && isOnward) cost += content === 'chord_tones' ? 1.2 : 2.5;
  if (Math.abs(last) > 7 && Math.abs(move) > 4) cost += 2;
  if (Math.abs(last) >= 12 && isOnward) cost += 8;
  if (content === 'chord_tones' && !isOnward && move !== 0 && last !== 0 && !place.isChange) cost += 0.5;
  if (content === 'enclosures' && isTarget(place)) cost += enclosureCost(to, from, before);
  return cost;
}

/** A line that comes back to a note for the third time within six circles it. */
function returnCost(to: Choice, from: Trail<Choice>): number {
  let times = 0;
  let trail: Trail<Choice> | undefined = from;
  for (let back = 0; back < 6 && trail !== undefined; back++, trail = trail.last)
    if (trail.note.note.midi === to.note.midi) times++;
  return times < 2 ? 0 : 1.6 * (times - 1);
}

const breadth = 24;

/** How often a motif is tried; the try whose figure comes back in most bars is kept. */
const motifTries = 4;

/** A motif and the bars after it that take up its movement: found once, it stays, and the others follow it. */
function motifPath(
  random: Random,
  places: readonly Place[],
  options: LineOptions,
): readonly LineNote[] | null {
  const isModel = new Set([...options.models, ...options.contrasts]);
  let best: readonly LineNote[] | null = null;
  let mostKept = -1;
  for (let i = 0; i < motifTries; i++) {
    const choices = choicesFor(random, places, options);
    const sketch = cheapestMelody(choices, lineCost(places, null, options), breadth);
    if (sketch === null) return null;
    const models = sketch.notes.map(({ note }) => note);
    const fixed = choices.map((all, at) => (isModel.has(at) ? sketch.notes.slice(at, at + 1) : all));
    const found = cheapestMelody(fixed, lineCost(places, models, options), breadth) ?? sketch;
    const notes = found.notes.map(({ note }) => note);
    const kept = keptMoves(notes, options.models);
    if (kept > mostKept) [best, mostKept] = [notes, kept];
  }
  return best;
}

/** Moves of the line that are those of its motif. */
function keptMoves(notes: readonly LineNote[], models: LineOptions['models']): number {
  return notes.filter((note, i) => {
    const [model, modelBefore] = [models[i], models[i - 1]];
    if (model == null || modelBefore == null || model !== modelBefore + 1) return false;
    const [a, b, before] = [notes[model], notes[modelBefore], notes[i - 1]];
    if (a === undefined || b === undefined || before === undefined) return false;
    return note.step - before.step === a.step - b.step;
  }).length;
}

/** The line, one pitch for each slot and null at rests; null where leaps and range leave no way. */
export function composeLine(
  random: Random,
  slots: readonly Slot[],
  options: LineOptions,
): readonly (WrittenPitch | null)[] | null {
  const places = findPlaces(slots, options);
  const hasMotif = [...options.models, ...options.contrasts].some((model) => model !== null);
  const notes = hasMotif
    ? motifPath(random, places, options)
    : cheapestMelody(
        choicesFor(random, places, options),
        lineCost(places, null, options),
        breadth,
      )?.notes.map(({ note }) => note);
  if (notes == null) return null;
  const found = spellResolutions(notes);
  let next = 0;
  return slots.map((slot) => (slot.isRest ? null : present(found[next++], 'a note for every sound')));
}
