// Where everything of a take lies on its picture: waveform, bars, chords, notes, phrases. Pure; the component only draws.

import type { HeardTake, WrittenContext } from '#contract';
import { beatToSeconds, type Evidence } from '#listening';
import { formatChord, parseChart, unfoldRepeats } from '#music';
import { beatsPerBar } from './take-settings.ts';

export interface RollNote {
  readonly index: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}
export interface RollBar {
  readonly number: number;
  readonly x: number;
  readonly chord: string;
}

export interface Roll {
  readonly width: number;
  readonly height: number;
  readonly rowHeight: number;
  readonly secondsToX: (seconds: number) => number;
  /** Outline of the waveform. */
  readonly waveform: string;
  readonly bars: readonly RollBar[];
  /** Heights of the Cs, to read pitch by. */
  readonly octaves: readonly { readonly midi: number; readonly y: number }[];
  readonly notes: readonly RollNote[];
  /** Slurs over the phrases. */
  readonly phrases: readonly string[];
}

const pixelsPerSecond = 70;
const narrowest = 560;
const head = 44;
const waveHeight = 56;
const rowHeight = 8;
const gap = 26;

/** Lays a take out, as wide as it is long. */
export function drawRoll(heard: HeardTake, evidence: Evidence, context: WrittenContext): Roll {
  const width = Math.max(narrowest, Math.ceil(heard.seconds * pixelsPerSecond));
  const secondsToX = (seconds: number) => (seconds / Math.max(0.001, heard.seconds)) * width;
  const midis = heard.notes.map((note) => note.midi);
  const lowest = Math.min(...midis, 72) - 2;
  const highest = Math.max(...midis, 60) + 2;
  const top = head + waveHeight + gap;
  const midiToY = (midi: number) => top + (highest - midi) * rowHeight;
  const phrases = evidence.phrases.heard ? evidence.phrases.details.phrases : [];
  return {
    width,
    height: midiToY(lowest) + rowHeight,
    rowHeight,
    secondsToX,
    waveform: drawWave(heard.waveform, width),
    bars: listBars(heard, context).map((bar) => ({ ...bar, x: secondsToX(bar.seconds) })),
    octaves: range(Math.ceil(lowest / 12), Math.floor(highest / 12)).map((octave) => ({
      midi: octave * 12,
      y: midiToY(octave * 12),
    })),
    notes: heard.notes.map((note, index) => ({
      index,
      x: secondsToX(note.onset),
      y: midiToY(note.midi),
      width: Math.max(3, secondsToX(note.offset) - secondsToX(note.onset)),
    })),
    phrases: phrases.map((phrase) => {
      const [from, to] = [secondsToX(phrase.from) + 2, secondsToX(phrase.to) - 2];
      const inside = midis.slice(phrase.first, phrase.last + 1);
      const y = midiToY(Math.max(...inside, lowest)) - 4;
      const rise = Math.min(18, 6 + (to - from) / 20);
      const [left, right] = [from + (to - from) * 0.2, from + (to - from) * 0.8];
      return `M${from} ${y}C${left} ${y - rise} ${right} ${y - rise} ${to} ${y}`;
    }),
  };
}

const range = (from: number, to: number): readonly number[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i);

function drawWave(waveform: readonly number[], width: number): string {
  if (waveform.length === 0) return '';
  const middle = head + waveHeight / 2;
  const x = (i: number) => ((i + 0.5) / waveform.length) * width;
  const above = waveform.map(
    (level, i) => `${x(i).toFixed(1)} ${(middle - (level * waveHeight) / 2 - 0.5).toFixed(1)}`,
  );
  const below = waveform.map(
    (level, i) => `${x(i).toFixed(1)} ${(middle + (level * waveHeight) / 2 + 0.5).toFixed(1)}`,
  );
  return `M${above.join('L')}L${below.reverse().join('L')}Z`;
}

/** Barlines of the take, with what the chart has for each. Bar 1 may begin before the recording. */
function listBars(
  heard: HeardTake,
  context: WrittenContext,
): readonly { readonly number: number; readonly seconds: number; readonly chord: string }[] {
  const { alignment } = heard;
  if (alignment === null) return [];
  const beats = beatsPerBar(context.metre);
  const chart = context.chart === null ? null : parseChart(context.chart);
  const chords = chart?.ok
    ? unfoldRepeats(chart.value.bars).map((bar) =>
        bar.chords.map(({ chord }) => (chord === null ? 'N.C.' : formatChord(chord))).join(' '),
      )
    : [];
  const bars: { number: number; seconds: number; chord: string }[] = [];
  for (let number = 1; number < 2000; number++) {
    const seconds = beatToSeconds(alignment.grid, (number - 1) * beats);
    if (seconds > heard.seconds) break;
    if (seconds >= 0)
      bars.push({ number, seconds, chord: chords[(number - 1) % Math.max(1, chords.length)] ?? '' });
  }
  return bars;
}
