// The arranger: chart, feel and tempo → what bass, keys and drums play. The same spec and seed give the same notes.
// Whatever a lesson mode leaves free stays free: notes are cut at the bar line, and nothing is played into a bar early
// that its player does not play.

import { assert, createSeededRandom, present, type Random, randomInteger } from '#core';
import type {
  ArrangedBar,
  ArrangedNote,
  ArrangedPart,
  Arrangement,
  PartName,
  SoundingChord,
} from './arrangement.ts';
import { type BackingSpec, humanLimits } from './backing-spec.ts';
import { bassLine } from './bass-line.ts';
import { chooseFigure, type Hit } from './comping.ts';
import { drumBar, kit } from './drum-pattern.ts';
import { barTicks, type Feel, feelById, offBeatTick, swingRatioAt, ticksPerCrotchet } from './feel.ts';
import { layOut, tempoOf } from './layout.ts';
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
const electric: ReadonlySet<string> = new Set(['rock', 'shuffle', 'straight', 'six-eight']);

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
  add('click', 9, feel.isSoft ? programs.brushKit : programs.kit, clickPart(setting));
  add('drone', 2, programs.drone, dronePart(spec, bars, end));
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
    const first = bars[stretch[0]?.chord.bar ?? 0];
    if (first === undefined) continue;
    // The tempo, and with it the swing, changes only between choruses.
    const lines = bassLine(
      stretch.map((one) => one.chord),
      spec.feel,
      feel.beatTicks,
      offBeat(first),
      last,
      random,
    );
    lines.forEach((line, at) => {
      const { chord, index } = stretch[at] ?? { chord: undefined, index: 0 };
      const bar = chord === undefined ? undefined : bars[chord.bar];
      if (chord === undefined || bar === undefined) return;
      const given = bar.isLast
        ? line.slice(0, 1).map((one) => ({ ...one, ticks: 2 * bar.ticks - 120 - (chord.tick - bar.tick) }))
        : line;
      // In its last bar the band ends on the first chord.
      if (bar.isLast && chord.tick > bar.tick) return;
      for (const one of given) {
        last = one.midi;
        notes.push(
          noteOf(
            chord.tick + one.at,
            one.ticks,
            one.midi,
            velocity(one.accent, bar.intensity, feel.isSoft),
            index,
          ),
        );
      }
    });
  }
  return notes;
}

interface Indexed {
  readonly chord: SoundingChord;
  readonly index: number;
}

/** Chords of bars played one after another by the whole band, within one chorus. */
function playedStretches(
  bars: readonly ArrangedBar[],
  chords: readonly SoundingChord[],
): readonly (readonly Indexed[])[] {
  const stretches: Indexed[][] = [];
  let open: Indexed[] | null = null;
  let chorus = -1;
  chords.forEach((chord, index) => {
    const bar = bars[chord.bar];
    if (!isPlayed(bar) || bar?.chorus !== chorus) open = null;
    chorus = bar?.chorus ?? -1;
    if (!isPlayed(bar)) return;
    if (open === null) {
      open = [];
      stretches.push(open);
    }
    open.push({ chord, index });
  });
  return stretches;
}

function keysPart({ spec, feel, bars, chords, offBeat }: Setting, random: Random): readonly ArrangedNote[] {
  const isPlain = spec.feel === 'rock' || spec.feel === 'six-eight';
  const notes: ArrangedNote[] = [];
  let figure: readonly Hit[] | null = null;
  let voicing: readonly number[] | null = null;
  let voiced: number | null = null;
  const sound = (chordAt: number, tick: number, ticks: number, force: number, intensity: number) => {
    const chord = chords[chordAt]?.chord ?? null;
    if (chord === null || ticks <= 0) return;
    if (voiced !== chordAt || voicing === null) voicing = nextVoicing(chord, voicing, isPlain);
    voiced = chordAt;
    for (const midi of voicing)
      notes.push(noteOf(tick, ticks, midi, velocity(force * 0.85, intensity, feel.isSoft), chordAt));
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
    figure = chooseFigure(spec.feel, figure, random);
    const next = bars[barAt + 1];
    const starts = figure.map((hit) => ({
      hit,
      tick: bar.tick + quaverTick(hit.quaver, feel, offBeat(bar)),
    }));
    // A chord that no hit falls into would not be heard: it gets one where it begins.
    const unheard = own.filter(
      ({ chord }) =>
        !starts.some(({ hit, tick }) => !hit.early && tick >= chord.tick && tick < chord.tick + chord.ticks),
    );
    const hits = [
      ...starts.map(({ hit, tick }) => ({ tick, quavers: hit.length, accent: hit.accent, early: hit.early })),
      ...unheard.map(({ chord }) => ({ tick: chord.tick, quavers: 2, accent: 0.5, early: false })),
    ].sort((a, b) => a.tick - b.tick);
    hits.forEach((hit, nth) => {
      const here = own.findLast(({ chord }) => chord.tick <= hit.tick);
      const after = chords.findIndex((chord) => chord.bar === barAt + 1);
      const mayAnticipate = hit.early && isPlayed(next) && next?.chorus === bar.chorus && after >= 0;
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

function drumPart({ spec, feel, bars, offBeat }: Setting, random: Random): readonly ArrangedNote[] {
  const notes: ArrangedNote[] = [];
  const hit = (tick: number, midi: number, force: number, bar: ArrangedBar, ticks = 60) =>
    notes.push(noteOf(tick, ticks, midi, velocity(force, bar.intensity, feel.isSoft), null));
  let nth = 0;
  let chorus = -1;
  bars.forEach((bar) => {
    if (bar.chorus < 0) return;
    nth = bar.chorus === chorus ? nth + 1 : 0;
    chorus = bar.chorus;
    if (bar.role === 'free') return;
    if (bar.isLast) {
      hit(bar.tick, kit.crash, 0.75, bar, 2 * bar.ticks - 120);
      hit(bar.tick, kit.kick, 0.75, bar);
      return;
    }
    const opensSection = bar.role === 'play' && nth > 0 && bar.section !== null;
    if (opensSection && !feel.isSoft) hit(bar.tick, kit.crash, 0.55, bar, bar.ticks);
    const endsHere = bar.endsSection && bar.role === 'play';
    for (const stroke of drumBar(spec.feel, nth, bar.role === 'play', endsHere, random))
      hit(bar.tick + quaverTick(stroke.quaver, feel, offBeat(bar)), kit[stroke.drum], stroke.force, bar);
  });
  return notes;
}

/** Beats counted in a bar: in the first of two bars only every other one, as bands count. Common practice, no source. */
function countedBeats(feel: Feel, barAt: number, counted: number): readonly number[] {
  const beats = Math.round(barTicks(feel) / feel.beatTicks);
  const all = Array.from({ length: beats }, (_, at) => at);
  return counted === 2 && barAt === 0 && beats === 4 ? [0, 2] : all;
}

const click = { high: 76, low: 77 } as const; // General MIDI high and low wood block

/** The count, which is heard whoever is muted, and the click. */
function clickPart({ spec, feel, bars }: Setting): readonly ArrangedNote[] {
  const beats = Math.round(barTicks(feel) / feel.beatTicks);
  const counted = bars.filter((bar) => bar.role === 'count-in').length;
  const sounds = (bar: ArrangedBar, at: number, beat: number): boolean => {
    if (spec.click === 'first') return beat === 0;
    if (spec.click === 'back') return beat % 2 === 1;
    // Each chorus leaves one more of every four bars without a click.
    return spec.click === 'every' || (spec.click === 'vanishing' && at % 4 < 4 - Math.min(3, bar.chorus));
  };
  let inChorus = 0;
  let inCount = 0;
  let chorus = -1;
  return bars.flatMap((bar) => {
    const strike = (beat: number, midi: number, loud: number) =>
      noteOf(bar.tick + beat * feel.beatTicks, 60, midi, loud, null);
    if (bar.role === 'count-in')
      return countedBeats(feel, inCount++, counted).map((beat) => strike(beat, kit.sideStick, 92));
    if (bar.chorus < 0) return [];
    inChorus = bar.chorus === chorus ? inChorus + 1 : 0;
    chorus = bar.chorus;
    const at = inChorus;
    return Array.from({ length: beats }, (_, beat) => beat)
      .filter((beat) => sounds(bar, at, beat))
      .map((beat) => strike(beat, beat === 0 ? click.high : click.low, beat === 0 ? 100 : 80));
  });
}

/** The tone to tune to, then a held tone, struck again every four bars so that it never dies away. */
function dronePart(
  { drone, tuning }: BackingSpec,
  bars: readonly ArrangedBar[],
  end: number,
): readonly ArrangedNote[] {
  const held = (midi: number, loud: number, from: number, to: number) =>
    noteOf(from, to - from - 10, midi, loud, null);
  const begin = bars.find((bar) => bar.role !== 'tuning')?.tick ?? 0;
  const tones: ArrangedNote[] = [];
  if (tuning !== null) tones.push(held(tuning, 80, 0, begin));
  if (drone !== null)
    for (const [at, bar] of bars.filter((one) => one.role !== 'tuning').entries())
      if (at % 4 === 0) tones.push(held(drone, 60, bar.tick, Math.min(end, bar.tick + 4 * bar.ticks)));
  return tones;
}

const noteOf = (
  tick: number,
  ticks: number,
  midi: number,
  loud: number,
  chord: number | null,
): ArrangedNote => ({
  tick,
  grid: tick,
  ticks: Math.max(1, ticks),
  midi,
  velocity: loud,
  chord,
});

/**
 * Moves notes a little off the grid and apart in loudness, those struck together as one. A note stays inside the stretch
 * of bars that its part plays, and ends before the same note is struck again.
 */
function humanised(
  notes: readonly ArrangedNote[],
  spec: BackingSpec,
  bars: readonly ArrangedBar[],
  loudness: number,
  random: Random,
): readonly ArrangedNote[] {
  const stretches = stretchesOfOneRole(bars);
  const length = present(bars[0], 'a bar').ticks;
  const shiftByGrid = new Map<number, number>();
  const most = Math.round(humanLimits.ticks * spec.humanise);
  const louder = Math.round(humanLimits.velocity * spec.humanise);
  const moved = notes.map((note) => {
    const shift = shiftByGrid.get(note.grid) ?? randomInteger(random, -most, most);
    shiftByGrid.set(note.grid, shift);
    const change = randomInteger(random, -louder, louder);
    const { from, to } = present(
      stretches[Math.min(bars.length - 1, Math.floor(note.grid / length))],
      'a bar',
    );
    const tick = Math.max(from, note.grid + shift);
    return {
      ...note,
      tick,
      ticks: Math.max(1, Math.min(tick + note.ticks, to) - tick),
      velocity: Math.max(1, Math.min(127, Math.round((note.velocity + change) * (0.3 + 0.7 * loudness)))),
    };
  });
  const struckAgain = new Map<number, number>();
  return moved
    .toSorted((a, b) => b.tick - a.tick)
    .flatMap((note) => {
      const again = struckAgain.get(note.midi) ?? Number.POSITIVE_INFINITY;
      struckAgain.set(note.midi, note.tick);
      return again === note.tick ? [] : [{ ...note, ticks: Math.min(note.ticks, again - note.tick) }];
    });
}

/** For each bar, from where to where the bars around it have its role; the band's last chord rings beyond the last bar. */
function stretchesOfOneRole(
  bars: readonly ArrangedBar[],
): readonly { readonly from: number; readonly to: number }[] {
  const stretches: { from: number; to: number }[] = [];
  bars.forEach((bar, at) => {
    const before = stretches[at - 1];
    const goesOn = before !== undefined && bars[at - 1]?.role === bar.role;
    const stretch = goesOn ? before : { from: bar.tick, to: 0 };
    stretch.to = bar.isLast ? Number.POSITIVE_INFINITY : bar.tick + bar.ticks;
    stretches.push(stretch);
  });
  return stretches;
}
