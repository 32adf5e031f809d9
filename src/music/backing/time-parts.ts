// What keeps time beside the band: the count, the click, the tone to tune to and the held tone.

import { type ArrangedBar, type ArrangedNote, noteOf } from './arrangement.ts';
import type { BackingSpec } from './backing-spec.ts';
import { kit } from './drum-pattern.ts';
import { barTicks, type Feel } from './feel.ts';

/** Beats counted in a bar: in the first of two bars only one and three, or one in three, as bands count. Common practice, no source. */
function countedBeats(feel: Feel, barAt: number, counted: number): readonly number[] {
  const beats = Math.round(barTicks(feel) / feel.beatTicks);
  const all = Array.from({ length: beats }, (_, at) => at);
  return counted === 2 && barAt === 0 && beats > 2
    ? all.filter((beat) => beat % (beats === 4 ? 2 : beats) === 0)
    : all;
}

const click = { high: 76, low: 77 } as const; // General MIDI high and low wood block

/** The count, which is heard whoever is muted, and the click. */
export function clickPart(
  spec: BackingSpec,
  feel: Feel,
  bars: readonly ArrangedBar[],
): readonly ArrangedNote[] {
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
      return countedBeats(feel, inCount++, counted).map((beat) =>
        strike(beat, kit.sideStick, feel.isSoft ? 58 : 116),
      );
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
export function dronePart(
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
