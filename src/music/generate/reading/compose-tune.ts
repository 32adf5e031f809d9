// A tune to read at sight: stepwise, leaps inside the chord, one high point, a question and an answer where there is room,
// home by step at the end. Bars with one rhythm take up each other's shape.

import { present, type Random } from '#core';
import type { Key } from '../../key/key.ts';
import { pitchToMidi, type WrittenPitch, written } from '../../pitch/pitch.ts';
import type { Metre } from '../../rhythm/metre.ts';
import { cheapestMelody, type MelodyCost } from '../melody/cheapest-melody.ts';
import { arch } from '../melody/contour.ts';
import type { Slot } from '../rhythm/beat-figure.ts';
import { barTicks, beatGrid, metricLevel } from '../rhythm/beat-grid.ts';
import type { RhythmLine } from '../rhythm/compose-rhythm.ts';
import { type HarmonyRoot, isChordDegree, planHarmony } from './plan-harmony.ts';

export interface TuneOptions {
  readonly key: Key;
  readonly metre: Metre;
  /** The notes of the key that may be used, lowest first. */
  readonly notes: readonly { readonly pitch: WrittenPitch; readonly degree: number }[];
  /** Key number of the highest note in reach. */
  readonly highest: number;
  /** Largest interval: 5 is a fifth. */
  readonly leap: number;
  readonly grade: number;
}

export interface Tune {
  /** One for each slot; null at rests. */
  readonly pitches: readonly (WrittenPitch | null)[];
  readonly harmony: readonly HarmonyRoot[];
}

interface TuneNote {
  readonly pitch: WrittenPitch;
  readonly midi: number;
  /** Place among the notes of the key, counted from the lowest. */
  readonly rung: number;
  readonly degree: number;
  readonly isChordTone: boolean;
  readonly own: number;
}

interface Place {
  readonly slot: Slot;
  readonly bar: number;
  readonly level: number;
  /** Same place of an earlier bar with the same rhythm; null for none. */
  readonly model: number | null;
  readonly isLast: boolean;
  readonly isPhraseEnd: boolean;
}

const offChord = [3.2, 2.4, 1.4, 0.3, 0.2];
const intervalCosts = [1.4, 0, 0.5, 1.3, 1.6, 2.6, 9, 2.8];

/** Where each sounding slot stands. */
function findPlaces(line: RhythmLine, metre: Metre): readonly Place[] {
  const length = barTicks(metre);
  const grid = beatGrid(metre);
  const sounding = line.slots.filter((slot) => !slot.isRest);
  const firstBarByLetter = new Map<string, number>();
  return sounding.map((slot, i): Place => {
    const bar = Math.floor(slot.at / length);
    const plan = present(line.plan[bar], 'a plan for every bar');
    const first = firstBarByLetter.get(plan.letter) ?? bar;
    firstBarByLetter.set(plan.letter, first);
    const inBar = slot.at - bar * length;
    const model =
      first === bar || plan.close !== 'none'
        ? -1
        : sounding.findIndex((other) => other.at === first * length + inBar && other.length === slot.length);
    const next = sounding[i + 1];
    const endsBar = next === undefined || Math.floor(next.at / length) > bar;
    return {
      slot,
      bar,
      level: metricLevel(grid, inBar),
      model: model < 0 ? null : model,
      isLast: next === undefined,
      isPhraseEnd: plan.close !== 'none' && endsBar,
    };
  });
}

/** The phrase a bar belongs to, as the first and the one past the last bar of it. */
function phraseOf(line: RhythmLine, bar: number): readonly [number, number] {
  const start = line.plan.slice(0, bar).findLastIndex((b) => b.close !== 'none') + 1;
  const end = line.plan.findIndex((b, i) => i >= bar && b.close !== 'none');
  return [start, end < 0 ? line.plan.length : end + 1];
}

/** What each note costs at its place by itself. */
function candidates(
  random: Random,
  line: RhythmLine,
  places: readonly Place[],
  harmony: readonly HarmonyRoot[],
  options: TuneOptions,
): readonly (readonly TuneNote[])[] {
  const length = barTicks(options.metre);
  const top = options.notes.length - 1;
  const tonics = options.notes.flatMap(({ degree }, i) => (degree === 0 ? [i] : []));
  const home = present(
    tonics.toSorted((a, b) => Math.abs(a - top * 0.3) - Math.abs(b - top * 0.3))[0],
    'the tonic is among the notes',
  );
  const plain = options.notes.map(({ pitch }) => ({ pitch, midi: pitchToMidi(pitch) }));
  const raised = options.notes.map(({ pitch, degree }, i) => {
    const isLeading = options.key.mode === 'minor' && degree === 6;
    const up = written({ ...pitch, alter: pitch.alter + 1 });
    return isLeading ? { pitch: up, midi: pitchToMidi(up) } : present(plain[i], 'a note');
  });
  const peaks = new Map<number, { readonly at: number; readonly height: number }>();
  const fromTonic = options.notes.map((_, rung) =>
    Math.min(...tonics.map((tonic) => Math.abs(rung - tonic))),
  );
  return places.map((place, i) => {
    const [start, end] = phraseOf(line, place.bar);
    const peak = peaks.get(start) ?? { at: 0.45 + 0.3 * random.next(), height: 0.75 + 0.25 * random.next() };
    peaks.set(start, peak);
    const share = (place.slot.at - start * length) / ((end - start) * length);
    const target = home + (top * peak.height - home) * arch(share, peak.at);
    const root = present(harmony[place.bar], 'a chord for every bar');
    const all = options.notes.map(({ degree }, rung): TuneNote => {
      const sounding = present((root === 4 ? raised : plain)[rung], 'a note');
      const isChordTone = isChordDegree(root, degree);
      let own = random.next() * 0.8 + 0.2 * Math.abs(rung - target);
      if (!isChordTone) own += (offChord[place.level] ?? 0.2) * (place.slot.length >= 48 ? 1.4 : 1);
      if (root === 4 && degree === 3) own += place.level <= 1 ? 1.5 : 0.3; // the seventh wants no stress
      // Home has to stay in reach.
      if (present(fromTonic[rung], 'a distance') > (places.length - 1 - i) * (options.leap - 1))
        own = Number.POSITIVE_INFINITY;
      if (place.isLast) own += 0.3 * Math.abs(rung - home);
      if (place.slot.at === 0 && degree !== 0 && degree !== 2 && degree !== 4) own += 6;
      if (sounding.midi > options.highest) own = Number.POSITIVE_INFINITY; // a raised top note
      if (place.isPhraseEnd && !place.isLast && (!isChordTone || degree === 3)) own += 5;
      return { pitch: sounding.pitch, midi: sounding.midi, rung, degree, isChordTone, own };
    });
    return all.filter(({ own }) => own < Number.POSITIVE_INFINITY);
  });
}

/** What going from note to note costs. */
function pathCost(
  options: TuneOptions,
  places: readonly Place[],
  model: readonly TuneNote[] | null,
): MelodyCost<TuneNote> {
  const isMinor = options.key.mode === 'minor';
  return {
    first: (to) => to.own,
    step(to, from, at) {
      const move = to.rung - from.rung;
      const size = Math.abs(move);
      const semitones = Math.abs(to.midi - from.midi);
      if (size > 1 && size + 1 > options.leap) return Number.POSITIVE_INFINITY;
      // No augmented seconds to read, and no two names for one key.
      if (size === 1 && (semitones > 2 || semitones === 0)) return Number.POSITIVE_INFINITY;
      const place = present(places[at], 'a place');
      const left = present(places[at - 1], 'the place before');
      let cost = to.own + (intervalCosts[size] ?? 6);
      if (size >= 2) {
        if (!to.isChordTone || !from.isChordTone) cost += 2.5;
        if (place.slot.length <= 24 || left.slot.length <= 24) cost += 0.8 * (size - 1);
        if (semitones === 6 || semitones === 10 || semitones === 11) cost += 4;
      }
      if (isMinor && from.degree === 6 && from.isChordTone && to.degree !== 0) cost += 1.2;
      if (!from.isChordTone && size !== 1) cost += 2.2;
      if (place.isLast && size !== 1) cost += from.degree === 4 ? 2.2 : 3;
      if (model !== null && place.model !== null && left.model !== null && place.model === left.model + 1) {
        const then = present(model[place.model], 'a note').rung - present(model[left.model], 'a note').rung;
        cost += move === then ? -1.4 : 0.5;
      }
      return cost;
    },
    turn(to, from, before, at) {
      if (present(places[at - 1], 'the place before').isPhraseEnd) return 0;
      const move = to.rung - from.rung;
      const last = from.rung - before.rung;
      const [size, lastSize] = [Math.abs(move), Math.abs(last)];
      const isOnward = Math.sign(move) === Math.sign(last);
      let cost = 0;
      if (lastSize >= 3) {
        if (move === 0 || isOnward) cost += 2.5;
        else if (size > 2) cost += 1.2;
      }
      const isArpeggio = to.isChordTone && from.isChordTone && before.isChordTone;
      if (lastSize === 2 && size >= 2 && isOnward && !isArpeggio) cost += 2;
      if (move === 0 && last === 0) cost += 2.5;
      if (to.rung === before.rung && move !== 0) cost += 0.7;
      return cost;
    },
  };
}

/** How a finished tune strikes the ear as a whole: a high point heard once, enough notes, not all steps. */
function critique(notes: readonly TuneNote[], options: TuneOptions): number {
  const top = Math.max(...notes.map((note) => note.rung));
  let highPoints = 0;
  for (const [i, note] of notes.entries()) if (note.rung === top && notes[i - 1]?.rung !== top) highPoints++;
  const used = new Set(notes.map((note) => note.rung)).size;
  const wanted = Math.min(options.notes.length, 5, Math.ceil(notes.length / 2));
  const leaps = notes.filter(
    (note, i) => i > 0 && Math.abs(note.rung - (notes[i - 1]?.rung ?? note.rung)) >= 2,
  );
  const isAllSteps = leaps.length === 0 && notes.length > 6 && options.leap > 2;
  return 2 * Math.max(0, highPoints - 1) + 2.5 * Math.max(0, wanted - used) + (isAllSteps ? 3 : 0);
}

/** The cheaper half of what a wide compass offers: far notes hardly ever win. */
function likeliest(choices: readonly TuneNote[]): readonly TuneNote[] {
  if (choices.length <= 9) return choices;
  return choices.toSorted((a, b) => a.own - b.own).slice(0, 9);
}

const tries = 3;
const sketchBreadth = 6;
const widestBreadth = 80;
const breadth = 16;

/** A tune on a rhythm; null where the notes given leave no way to the end. */
export function composeTune(random: Random, line: RhythmLine, options: TuneOptions): Tune | null {
  const places = findPlaces(line, options.metre);
  let sketch: {
    readonly notes: readonly TuneNote[];
    readonly choices: readonly (readonly TuneNote[])[];
  } | null = null;
  let harmony: readonly HarmonyRoot[] = [];
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < tries; i++) {
    const planned = planHarmony(random, line.plan);
    const choices = candidates(random, line, places, planned, options);
    const steps = pathCost(options, places, null);
    const path =
      cheapestMelody(choices.map(likeliest), steps, sketchBreadth) ??
      cheapestMelody(choices, steps, widestBreadth);
    if (path === null) continue;
    const cost = (path.cost / Math.max(1, places.length)) * 4 + critique(path.notes, options);
    if (cost < lowest) [sketch, harmony, lowest] = [{ notes: path.notes, choices }, planned, cost];
  }
  if (sketch === null) return null;
  // Once more with the sketch as the model: bars of one letter take its shape.
  const withModel = pathCost(options, places, sketch.notes);
  const best = cheapestMelody(sketch.choices.map(likeliest), withModel, breadth);
  const found = [...(best?.notes ?? sketch.notes)];
  const pitches = line.slots.map((slot) => (slot.isRest ? null : (found.shift()?.pitch ?? null)));
  return { pitches, harmony };
}
