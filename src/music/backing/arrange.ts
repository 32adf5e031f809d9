// The arranger: chart, feel and tempo → what bass, keys and drums play. The same spec and seed give the same notes.
// Whatever a lesson mode leaves free stays free: notes are cut at the bar line, and nothing is played into a bar early
// that its player does not play.

import { assert, createSeededRandom, present, type Random } from '#core';
import {
  type ArrangedBar,
  type ArrangedNote,
  type ArrangedPart,
  type Arrangement,
  noteOf,
  type PartName,
  type SoundingChord,
} from './arrangement.ts';
import type { BackingSpec } from './backing-spec.ts';
import { bassLine } from './bass-line.ts';
import { chooseFigure, type Hit } from './comping.ts';
import { drumBar, kit } from './drum-pattern.ts';
import {
  barTicks,
  type Feel,
  type FeelId,
  feelById,
  offBeatTick,
  swingRatioAt,
  ticksPerCrotchet,
} from './feel.ts';
import { humanised } from './humanise.ts';
import { layOut, tempoOf } from './layout.ts';
import { clickPart, dronePart } from './time-parts.ts';
import { tunePart } from './tune-part.ts';
import { nextVoicing } from './voice-leading.ts';

/** General MIDI programs: acoustic and fingered bass, grand piano and electric piano, kits, and a reed organ for a held tone: it has no vibrato. */
const programs = {
  acousticBass: 32,
  fingeredBass: 33,
  piano: 0,
  electricPiano: 4,
  kit: 0,
  brushKit: 40,
  drone: 20,
} as const;
/** The feels with fingered bass and electric piano, in which a cymbal opens a section. */
const electric: ReadonlySet<FeelId> = new Set(['rock', 'shuffle', 'straight', 'six-eight']);

/** What every part needs of the whole. */
interface Setting {
  readonly spec: BackingSpec;
  readonly feel: Feel;
  readonly bars: readonly ArrangedBar[];
  readonly chords: readonly SoundingChord[];
  /** Ticks into a beat of the off-beat quaver, by bar: it follows the tempo. */
  readonly offBeat: (bar: ArrangedBar) => number;
}

/** Arranges. `seed` is any 32-bit integer; the spec is taken as valid (`parseBackingMaterial`). */
export function arrange(spec: BackingSpec, seed: number): Arrangement {
  assert(spec.choruses >= 1 && spec.chart.bars.length > 0, 'a backing track has a chart and a chorus');
  const feel = feelById(spec.feel);
  const { bars, chords, tempos, end } = layOut(spec, feel);
  const offBeat = (bar: ArrangedBar) =>
    feel.isSwung
      ? offBeatTick(spec.swing ?? swingRatioAt(tempoOf(spec, Math.max(0, bar.chorus))))
      : ticksPerCrotchet / 2;
  const setting: Setting = { spec, feel, bars, chords, offBeat };
  const swung = (bar: ArrangedBar, at: number) => quaverTick(at / (ticksPerCrotchet / 2), feel, offBeat(bar));
  // One stream of chance for each part: muting one changes nothing in the others.
  const random = (part: number) => createSeededRandom(Math.imul(seed ^ (part * 0x9e3779b9), 0x85ebca6b));
  const parts: ArrangedPart[] = [];
  const add = (name: PartName, channel: number, program: number, notes: readonly ArrangedNote[]) => {
    if (notes.length > 0)
      parts.push({
        name,
        channel,
        program,
        notes: notes.toSorted((a, b) => a.tick - b.tick || a.midi - b.midi),
      });
  };
  const isElectric = electric.has(spec.feel);
  if (spec.balance.bass > 0)
    add(
      'bass',
      0,
      isElectric ? programs.fingeredBass : programs.acousticBass,
      humanised(bassPart(setting, random(1)), spec, bars, spec.balance.bass, random(11)),
    );
  if (spec.balance.keys > 0)
    add(
      'keys',
      1,
      isElectric ? programs.electricPiano : programs.piano,
      humanised(keysPart(setting, random(2)), spec, bars, spec.balance.keys, random(12)),
    );
  if (spec.balance.drums > 0)
    add(
      'drums',
      9,
      feel.isSoft ? programs.brushKit : programs.kit,
      humanised(drumPart(setting, random(3)), spec, bars, spec.balance.drums, random(13)),
    );
  // One channel, one kit: the click is struck on the drummer's.
  add('click', 9, feel.isSoft ? programs.brushKit : programs.kit, clickPart(spec, feel, bars));
  add('drone', 2, programs.drone, dronePart(spec, bars, end));
  if (spec.tune !== null) add('tune', 3, programs.piano, tunePart(spec, spec.tune, bars, swung));
  return {
    ticksPerCrotchet,
    tempos,
    metre: { beats: feel.metre.beats, unit: feel.metre.unit },
    bars,
    chords,
    parts,
    end: end + (bars.some((bar) => bar.isLast) ? barTicks(feel) : 0),
  };
}

/** Accents, growth and metre in one figure; 1 to 127. */
const velocity = (force: number, intensity: number, isSoft: boolean) =>
  Math.max(1, Math.min(127, Math.round((38 + 74 * force + 16 * (intensity - 0.4)) * (isSoft ? 0.85 : 1))));

const isPlayed = (bar: ArrangedBar | undefined) => bar !== undefined && bar.role === 'play';

function bassPart({ spec, feel, bars, chords, offBeat }: Setting, random: Random): readonly ArrangedNote[] {
  const notes: ArrangedNote[] = [];
  let last: number | null = null;
  for (const stretch of playedStretches(bars, chords)) {
    const places = stretch.map(({ chord }) => {
      const bar = present(bars[chord.bar], 'the bar of a chord');
      // A band that grows walks only when it has warmed up.
      const isCalm = spec.grows && spec.feel === 'swing' && bar.intensity < 0.25;
      return {
        sounding: chord,
        offBeat: offBeat(bar),
        intensity: bar.intensity,
        feel: isCalm ? 'two-feel' : spec.feel,
        isMidBar: chord.tick > bar.tick,
      } as const;
    });
    bassLine(places, feel.beatTicks, last, random).forEach((line, at) => {
      const { chord, index } = present(stretch[at], 'the chord of a line');
      const bar = present(bars[chord.bar], 'the bar of a chord');
      // In its last bar the band ends on the first chord.
      if (bar.isLast && chord.tick > bar.tick) return;
      const given = bar.isLast
        ? line.slice(0, 1).map((one) => ({ ...one, at: 0, ticks: 2 * bar.ticks - 120 }))
        : line;
      for (const one of given) {
        last = one.midi;
        const loud = velocity(one.accent, bar.intensity, feel.isSoft);
        notes.push(noteOf(chord.tick + one.at, one.ticks, one.midi, loud, index));
      }
    });
  }
  return notes;
}

interface Indexed {
  readonly chord: SoundingChord;
  readonly index: number;
}

/** Chords of bars played one after another by the whole band. */
function playedStretches(
  bars: readonly ArrangedBar[],
  chords: readonly SoundingChord[],
): readonly (readonly Indexed[])[] {
  const stretches: Indexed[][] = [];
  let open: Indexed[] | null = null;
  chords.forEach((chord, index) => {
    if (!isPlayed(bars[chord.bar])) {
      open = null;
      return;
    }
    if (open === null) {
      open = [];
      stretches.push(open);
    }
    open.push({ chord, index });
  });
  return stretches;
}

function keysPart({ spec, feel, bars, chords, offBeat }: Setting, random: Random): readonly ArrangedNote[] {
  // The electric piano's samples are louder than the grand's.
  const touch = electric.has(spec.feel) ? 0.62 : 0.88;
  const isPlain = spec.feel === 'rock' || spec.feel === 'six-eight';
  const notes: ArrangedNote[] = [];
  const before = bars.findIndex((bar) => bar.chorus >= 0);
  let figure: readonly Hit[] | null = null;
  let voicing: readonly number[] | null = null;
  let voiced: number | null = null;
  const sound = (chordAt: number, tick: number, ticks: number, force: number, intensity: number) => {
    const chord = chords[chordAt]?.chord ?? null;
    if (chord === null || ticks <= 0) return;
    if (voiced !== chordAt || voicing === null) voicing = nextVoicing(chord, voicing, isPlain);
    voiced = chordAt;
    for (const midi of voicing)
      notes.push(noteOf(tick, ticks, midi, velocity(force * touch, intensity, feel.isSoft), chordAt));
  };
  bars.forEach((bar, barAt) => {
    if (!isPlayed(bar)) return;
    const own = chords.flatMap((chord, index) => (chord.bar === barAt ? [{ chord, index }] : []));
    const first = own[0];
    if (first === undefined) return;
    if (bar.isLast) {
      sound(first.index, bar.tick, 2 * bar.ticks - 120, 0.7, bar.intensity);
      return;
    }
    const half = ticksPerCrotchet / 2;
    figure = chooseFigure(
      {
        feel: spec.feel,
        nth: barAt - before,
        intensity: bar.intensity,
        starts: own.map(({ chord }) => Math.round((chord.tick - bar.tick) / half)),
      },
      figure,
      random,
    );
    const next = bars[barAt + 1];
    const starts = figure.map((hit) => ({
      hit,
      tick: bar.tick + quaverTick(hit.quaver, feel, offBeat(bar)),
    }));
    // A chord that came early is not struck again on its beat.
    const hits = starts
      .filter(({ hit }) => hit.quaver > 0 || voiced !== first.index)
      .map(({ hit, tick }) => ({ tick, quavers: hit.length, accent: hit.accent, early: hit.early }));
    hits.forEach((hit, nth) => {
      const here = own.findLast(({ chord }) => chord.tick <= hit.tick);
      const after = chords.findIndex((chord) => chord.bar === barAt + 1);
      const mayAnticipate = hit.early && isPlayed(next) && after >= 0;
      const chordAt = mayAnticipate ? after : here?.index;
      if (chordAt === undefined || (hit.early && !mayAnticipate)) return;
      const limit = mayAnticipate
        ? hit.tick + ticksPerCrotchet
        : (own.find(({ chord }) => chord.tick > hit.tick)?.chord.tick ?? bar.tick + bar.ticks);
      const nextHit = hits[nth + 1]?.tick ?? Number.POSITIVE_INFINITY;
      const until = Math.min(hit.tick + hit.quavers * (ticksPerCrotchet / 2), limit, nextHit);
      sound(chordAt, hit.tick, Math.round(until - hit.tick) - 12, hit.accent, bar.intensity);
    });
  });
  return notes;
}

/** Ticks after a bar's start of a place counted in quavers; the second of two comes late in a swung feel. */
export function quaverTick(quaver: number, feel: Feel, offBeat: number): number {
  const half = ticksPerCrotchet / 2;
  if (!feel.isSwung) return Math.round(quaver * half);
  const beat = Math.floor(quaver / 2);
  const within = quaver - 2 * beat;
  return (
    beat * ticksPerCrotchet +
    Math.round(within <= 1 ? within * offBeat : offBeat + (within - 1) * (ticksPerCrotchet - offBeat))
  );
}

/** The cymbal that the band ends on, and how hard. */
function lastStroke(feel: FeelId, isSoft: boolean): readonly [number, number] {
  if (isSoft) return [kit.ride, 0.25];
  return feel === 'bossa' ? [kit.ride, 0.5] : [kit.crash, 0.7];
}

function drumPart({ spec, feel, bars, offBeat }: Setting, random: Random): readonly ArrangedNote[] {
  // Ride, brushes and sticks are recorded softly in the bank.
  const lift = spec.feel === 'rock' || spec.feel === 'shuffle' ? 1 : 1.14;
  const notes: ArrangedNote[] = [];
  const hit = (tick: number, midi: number, force: number, bar: ArrangedBar, ticks = 60) =>
    notes.push(
      noteOf(
        tick,
        ticks,
        midi,
        Math.min(127, Math.round(velocity(force, bar.intensity, false) * lift)),
        null,
      ),
    );
  const first = bars.findIndex((bar) => bar.chorus >= 0);
  let chorus = 0;
  bars.forEach((bar, barAt) => {
    if (bar.chorus < 0) return;
    const isFull = bar.role === 'play';
    const opens = bar.chorus > chorus || (barAt > first && bar.section !== null);
    chorus = bar.chorus;
    if (bar.role === 'free') return;
    if (bar.isLast) {
      const [cymbal, force] = lastStroke(spec.feel, feel.isSoft);
      hit(bar.tick, cymbal, force, bar, 2 * bar.ticks - 120);
      // The brush kit's foot is loud: its last stroke is not to stand over all before it.
      hit(bar.tick, kit.kick, feel.isSoft ? 0.25 : 0.62, bar);
      return;
    }
    if (opens && isFull && electric.has(spec.feel)) hit(bar.tick, kit.crash, 0.5, bar, bar.ticks);
    const place = {
      feel: spec.feel,
      nth: barAt - first,
      isFull,
      endsSection: bar.endsSection,
      intensity: bar.intensity,
    };
    for (const stroke of drumBar(place, random)) {
      const tick = bar.tick + quaverTick(stroke.quaver, feel, offBeat(bar));
      // A circle of the brush sounds for two beats.
      const ticks = stroke.drum === 'brushSwirl' ? 2 * feel.beatTicks - 40 : 60;
      hit(tick, kit[stroke.drum], stroke.force, bar, ticks);
    }
  });
  return notes;
}
