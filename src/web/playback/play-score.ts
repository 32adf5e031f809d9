// Hear a score at once: plain tones, softly struck, by the browser's own synthesis. Notes are handed to it a second ahead, so
// that a long sheet costs nothing and stopping is immediate.

import { midiToFrequency, performScore, type Score, secondsAt } from '#music';

export interface Playing {
  stop(): void;
  /** When it has stopped, by itself or not. */
  readonly ended: Promise<void>;
}

interface Tone {
  readonly at: number;
  readonly seconds: number;
  readonly midi: number;
  /** 0 to 1. */
  readonly strength: number;
  readonly isDrum: boolean;
}

const aheadSeconds = 1;
const everyMs = 200;
const startDelay = 0.12;

/** The tones of a score in seconds from its beginning, and when each of its bars begins as it is played. */
export function scoreToTones(score: Score): {
  readonly tones: readonly Tone[];
  readonly bars: readonly { readonly at: number; readonly bar: number }[];
} {
  const performance = performScore(score);
  const seconds = (place: Parameters<typeof secondsAt>[1]) => secondsAt(performance, place);
  const tones = performance.notes.map(({ start, duration, midi, velocity, isDrum }) => {
    const at = seconds(start);
    const end = seconds({ n: start.n * duration.d + duration.n * start.d, d: start.d * duration.d });
    return { at, seconds: end - at, midi, strength: velocity / 127, isDrum };
  });
  return { tones, bars: performance.bars.map(({ start, index }) => ({ at: seconds(start), bar: index })) };
}

/** Plays from the beginning; `onBar` hears which of the score's bars, from 0, has begun, and null at the end. */
export function playScore(score: Score, onBar: (bar: number | null) => void): Playing {
  const { tones, bars } = scoreToTones(score);
  const context = new AudioContext();
  const out = context.createDynamicsCompressor(); // chords stay clean
  out.connect(context.destination);
  const begin = context.currentTime + startDelay;
  const end = Math.max(0, ...tones.map(({ at, seconds }) => at + seconds));
  let next = 0;
  let bar: number | null = null;
  let finish: () => void = () => {};
  const ended = new Promise<void>((done) => {
    finish = done;
  });
  const tick = () => {
    const now = context.currentTime - begin;
    for (let tone = tones[next]; tone !== undefined && tone.at < now + aheadSeconds; tone = tones[++next])
      strike(context, out, tone, begin + tone.at);
    const here = bars.findLast(({ at }) => at <= now)?.bar ?? null;
    if (here !== bar) {
      bar = here;
      onBar(bar);
    }
    if (now > end + 0.3) stop();
  };
  const timer = setInterval(tick, everyMs);
  const stop = () => {
    clearInterval(timer);
    if (context.state !== 'closed') void context.close();
    onBar(null);
    finish();
  };
  tick();
  return { stop, ended };
}

/** One tone: two soft partials that die away as a struck string does; a drum is a short, low knock. */
function strike(
  context: AudioContext,
  out: AudioNode,
  { midi, seconds, strength, isDrum }: Tone,
  at: number,
) {
  const level = context.createGain();
  level.connect(out);
  const length = isDrum ? 0.08 : Math.max(0.08, seconds);
  const frequency = isDrum ? 180 : midiToFrequency(midi);
  for (const [partial, share] of isDrum
    ? ([[1, 1]] as const)
    : ([
        [1, 0.8],
        [2, 0.2],
      ] as const)) {
    const source = context.createOscillator();
    const part = context.createGain();
    source.type = partial === 1 ? 'triangle' : 'sine';
    source.frequency.value = frequency * partial;
    part.gain.value = share;
    source.connect(part).connect(level);
    source.start(at);
    source.stop(at + length + 0.12);
  }
  const loud = 0.05 + 0.3 * strength;
  level.gain.setValueAtTime(0.0001, at);
  level.gain.exponentialRampToValueAtTime(loud, at + 0.012);
  level.gain.exponentialRampToValueAtTime(loud * 0.35, at + Math.max(0.05, length));
  level.gain.exponentialRampToValueAtTime(0.0001, at + length + 0.1);
}
