// What is known of a take beforehand: the grid it was played to, its harmony, its instrument. All of it may be unknown.

import { err, isFields, modulo, ok, type Result } from '#core';
import {
  beatUnits,
  type Chart,
  chordTones,
  createMetre,
  findInstrument,
  fraction,
  listScales,
  type Metre,
  parseChart,
  parsePitchName,
  pitchClass,
  unfoldRepeats,
} from '#music';

/** A take's surroundings as they are written in a file or sent by a screen. Pitches are sounding. */
export interface TakeContext {
  /** Beats a minute; a beat is the metre's own (a crotchet in 4/4, a dotted crotchet in 6/8). */
  readonly tempo: number | null;
  readonly metre: Metre;
  /** Share of the beat the first of two quavers takes: 0.5 straight, 0.667 two to one; null when not agreed. */
  readonly swing: number | null;
  /** Beats counted in between the file's start and bar 1; 0 when there are none. */
  readonly countInBeats: number;
  /** Seconds from the file's start to the first beat of bar 1, when it was played over a backing that started then. */
  readonly offsetS: number | null;
  /** Pitch classes of the scale in use, 0 is C. */
  readonly scale: ReadonlySet<number> | null;
  readonly chart: Chart | null;
  /** An instrument's id in #music. */
  readonly instrument: string | null;
}

export interface ContextUnreadable {
  readonly kind: 'ContextUnreadable';
  readonly field: string;
  readonly message: string;
}

/** The context of which nothing is known but that it is in four. */
export const unknownContext: TakeContext = {
  tempo: null,
  metre: createMetre(4, 4),
  swing: null,
  countInBeats: 0,
  offsetS: null,
  scale: null,
  chart: null,
  instrument: null,
};

/**
 * Reads `{ tempo, metre: [4, 4], swing, countInBeats, offsetS, scale: { tonic, name }, chart, instrument }`; every field
 * may be missing or null. The error names the field and how to mend it.
 */
export function parseTakeContext(value: unknown): Result<TakeContext, ContextUnreadable> {
  if (!isFields(value))
    return err({
      kind: 'ContextUnreadable',
      field: 'context',
      message: 'The context is not an object: write {} when nothing is known.',
    });
  const fields = value;
  const number = (name: string, low: number, high: number): Result<number | null, ContextUnreadable> => {
    const given = fields[name] ?? null;
    if (given === null) return ok(null);
    return typeof given === 'number' && given >= low && given <= high
      ? ok(given)
      : fault(name, `is ${show(given)}: write a number from ${low} to ${high}, or leave it out`);
  };
  const tempo = number('tempo', 20, 400);
  if (!tempo.ok) return tempo;
  const swing = number('swing', 0.5, 0.8);
  if (!swing.ok) return swing;
  const countIn = number('countInBeats', 0, 64);
  if (!countIn.ok) return countIn;
  const offset = number('offsetS', -60, 3600);
  if (!offset.ok) return offset;
  const metre = readMetre(fields['metre'] ?? null);
  if (!metre.ok) return metre;
  const scale = readScale(fields['scale'] ?? null);
  if (!scale.ok) return scale;
  const chart = readChart(fields['chart'] ?? null);
  if (!chart.ok) return chart;
  const instrument = fields['instrument'] ?? null;
  if (instrument !== null && (typeof instrument !== 'string' || findInstrument(instrument) === null))
    return fault(
      'instrument',
      `${show(instrument)} is not known: use an id such as "flute" or "clarinet_bb", or leave it out`,
    );
  return ok({
    tempo: tempo.value,
    swing: swing.value,
    countInBeats: countIn.value ?? 0,
    offsetS: offset.value,
    metre: metre.value,
    scale: scale.value,
    chart: chart.value,
    instrument,
  });
}

/** How beats lie in the bar: all alike, or one beat for each unit where the metre is irregular. */
export interface BeatFrame {
  readonly beatsPerBar: number;
  /** A beat's length in semibreves. */
  readonly beatLength: { readonly n: number; readonly d: number };
  /** Whether a beat divides by three. */
  readonly isCompound: boolean;
}

/** 4/4 → 4 beats of 1/4; 6/8 → 2 beats of 3/8; 7/8 → 7 beats of 1/8 */
export function beatFrame(metre: Metre): BeatFrame {
  const units = beatUnits(metre);
  const even = new Set(units).size === 1;
  const inBeat = even ? (units[0] ?? 1) : 1;
  return {
    beatsPerBar: even ? units.length : metre.beats,
    beatLength: fraction(inBeat, metre.unit),
    isCompound: inBeat === 3,
  };
}

/**
 * The chord tones, as pitch classes, at a beat counted from bar 1 (0 is its first); the chart begins again when it is
 * over. Null where there is no chord.
 */
export function createHarmony(context: TakeContext): (beat: number) => ReadonlySet<number> | null {
  if (context.chart === null) return () => null;
  const { beatsPerBar } = beatFrame(context.metre);
  const bars = unfoldRepeats(context.chart.bars).map((bar) =>
    bar.chords.map(({ at, chord }) => ({
      at: at.n / at.d,
      tones: chord === null ? null : new Set(chordTones(chord).map(pitchClass)),
    })),
  );
  return (beat) => {
    const place = beat / beatsPerBar;
    const index = Math.floor(place + 1e-9);
    const bar = bars[modulo(index, bars.length)] ?? [];
    return bar.filter((chord) => chord.at <= place - index + 1e-6).at(-1)?.tones ?? null;
  };
}

function readMetre(given: unknown): Result<Metre, ContextUnreadable> {
  if (given === null) return ok(unknownContext.metre);
  const [beats, unit] = Array.isArray(given) ? (given as unknown[]) : [];
  const known = ([1, 2, 4, 8, 16] as const).find((u) => u === unit);
  if (typeof beats !== 'number' || !Number.isInteger(beats) || beats < 1 || beats > 32 || known === undefined)
    return fault('metre', `is ${show(given)}: write it as [4, 4] or [6, 8]`);
  return ok(createMetre(beats, known));
}

function readScale(given: unknown): Result<ReadonlySet<number> | null, ContextUnreadable> {
  if (given === null) return ok(null);
  const { tonic, name } = isFields(given) ? given : {};
  const root = typeof tonic === 'string' ? parsePitchName(tonic) : null;
  if (root === null)
    return fault('scale', `its tonic is ${show(tonic)}: write a note name such as "Bb" or "F#"`);
  const plain = (text: string) =>
    text
      .toLowerCase()
      .replaceAll(/[_\s-]+/g, ' ')
      .trim();
  const wanted = typeof name === 'string' ? plain(name) : '';
  const scale = listScales().find((s) => plain(s.id) === wanted || s.names.some((n) => plain(n) === wanted));
  if (scale === undefined)
    return fault(
      'scale',
      `${show(name)} is not known: use a name such as "major", "dorian" or "major_pentatonic"`,
    );
  return ok(new Set(scale.steps.map((step) => (pitchClass(root) + step.chromatic) % 12)));
}

function readChart(given: unknown): Result<Chart | null, ContextUnreadable> {
  if (given === null || given === '') return ok(null);
  if (typeof given !== 'string')
    return fault('chart', `is ${show(given)}: write bars of chords as text, "C | Am | F | G7"`);
  const chart = parseChart(given);
  return chart.ok ? ok(chart.value) : fault('chart', chart.error.message);
}

function fault(field: string, problem: string): { ok: false; error: ContextUnreadable } {
  return err({
    kind: 'ContextUnreadable',
    field,
    message: `The context's ${field} ${problem.replace(/\.$/, '')}.`,
  });
}

function show(value: unknown): string {
  const text = JSON.stringify(value) ?? 'missing';
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
