// Plays what the worker renders: each piece is handed to the audio clock on its exact sample, seconds before it sounds, so
// that nothing the page does can be heard. What is heard now is read off the same clock.

import type { PartName } from '#music';
import type { FromBand, OpenTrack, Stem, ToBand, TrackWish } from './stem-messages.ts';

export interface PlayerState {
  readonly status: 'empty' | 'loading' | 'ready' | 'playing' | 'failed';
  /** The bar that sounds, as numbered on the chart: 0 while it is counted in, null when nothing sounds. */
  readonly bar: number | null;
  readonly chorus: number;
  /** Bars that the band has played before it, through repeats and choruses; those of a loop go round. */
  readonly nth: number;
  /** Pieces that came too late since the player was made, each a gap. */
  readonly late: number;
}

export interface Player {
  readonly state: () => PlayerState;
  readonly subscribe: (tell: () => void) => () => void;
  /** Gets a track ready. One that plays is begun anew with it. */
  load(wish: TrackWish, gain: number): void;
  play(): Promise<void>;
  stop(): void;
  /** Loudness of a part, 0 to 1; heard at once. */
  balance(part: PartName, share: number): void;
  /** Loudness of all, 0 to 1. */
  volume(share: number): void;
  /** Where in the context's clock bar 1 of the chart begins, in seconds; null while nothing plays. */
  barOneAt(): number | null;
  close(): void;
  readonly context: AudioContext;
  /** Where everything goes through on its way out. */
  readonly output: AudioNode;
}

/** Seconds of sound kept ahead of what is heard. */
const ahead = 8;
/** The first piece is short, so that it is there at once. */
const firstSeconds = 0.4;
const pieceSeconds = 1;
const startDelay = 0.04;
const everyMs = 100;
/** The browser's compressor makes its output this much louder by itself (Web Audio 1.1, 1.19.6: makeup gain). */
const makeup = 0.877;

export function createPlayer(): Player {
  const context = new AudioContext({ latencyHint: 'interactive' });
  const rate = context.sampleRate;
  const worker = new Worker(new URL('./band.worker.ts', import.meta.url), { type: 'module' });
  const output = context.createGain();
  const limiter = new DynamicsCompressorNode(context, {
    threshold: -2,
    knee: 0,
    ratio: 20,
    attack: 0.001,
    release: 0.1,
  });
  const level = context.createGain();
  level.connect(limiter).connect(output).connect(context.destination);
  const shareByPart = new Map<PartName, number>();
  let run = createRun(level);
  const gainOf = (part: PartName): GainNode => {
    const known = run.gainByPart.get(part);
    if (known !== undefined) return known;
    const made = new GainNode(context, { gain: shareByPart.get(part) ?? 1 });
    made.connect(run.fade);
    run.gainByPart.set(part, made);
    return made;
  };

  let state: PlayerState = { status: 'empty', bar: null, chorus: 0, nth: 0, late: 0 };
  const listeners = new Set<() => void>();
  const show = (change: Partial<PlayerState>) => {
    const next = { ...state, ...change };
    if (
      next.status === state.status &&
      next.bar === state.bar &&
      next.chorus === state.chorus &&
      next.nth === state.nth &&
      next.late === state.late
    )
      return;
    state = next;
    for (const tell of listeners) tell();
  };

  let number = 0;
  let wish: TrackWish | null = null;
  let track: OpenTrack | null = null;
  /** Pieces that wait for the start. */
  let held: { readonly from: number; readonly stems: readonly Stem[] }[] = [];
  let asked = 0;
  let got = 0;
  /** The sample of the audio clock on which the track begins; null while it does not play. */
  let begin: number | null = null;
  let wantsToPlay = false;
  const sources = new Set<AudioBufferSourceNode>();

  const send = (message: ToBand) => worker.postMessage(message);
  const heardFrames = () => (begin === null ? 0 : Math.max(0, context.currentTime * rate - begin));
  const ask = (seconds: number) => {
    const frames = Math.round(seconds * rate);
    asked += frames;
    send({ kind: 'render', number, frames });
  };
  const pump = () => {
    if (track === null) return;
    const end = track.length ?? Number.POSITIVE_INFINITY;
    const until = heardFrames() + ahead * rate;
    // Two in flight keep the worker busy and can still be thrown away when the track changes.
    while (asked < Math.min(end, until) && asked - got < 2 * pieceSeconds * rate) ask(pieceSeconds);
  };
  const schedule = ({ from, stems }: { readonly from: number; readonly stems: readonly Stem[] }) => {
    if (begin === null) return;
    const late = Math.ceil(context.currentTime * rate) - (begin + from);
    // Where the worker was too slow there is a gap; what follows stays together.
    if (late > 0 && from > 0) {
      begin += late + Math.round(startDelay * rate);
      show({ late: state.late + 1 });
    }
    for (const { name, left, right } of stems) {
      if (left.length === 0) continue;
      const buffer = new AudioBuffer({ numberOfChannels: 2, length: left.length, sampleRate: rate });
      buffer.copyToChannel(left, 0);
      buffer.copyToChannel(right, 1);
      const source = new AudioBufferSourceNode(context, { buffer });
      source.connect(gainOf(name));
      source.start((begin + from) / rate);
      sources.add(source);
      source.addEventListener('ended', () => sources.delete(source));
    }
  };
  const silence = () => {
    const now = context.currentTime;
    run.fade.gain.setTargetAtTime(0, now, 0.008);
    for (const source of sources) source.stop(now + 0.08);
    sources.clear();
    run = createRun(level);
    begin = null;
  };
  const open = () => {
    if (wish === null) return;
    [track, held, asked, got] = [null, [], 0, 0];
    show({ status: 'loading', bar: null, chorus: 0, nth: 0 });
    send({ kind: 'open', number: ++number, sampleRate: rate, wish });
  };
  const start = () => {
    begin = Math.ceil((context.currentTime + startDelay) * rate);
    for (const piece of held) schedule(piece);
    held = [];
    show({ status: 'playing' });
    follow();
    pump();
  };

  worker.addEventListener('message', ({ data }: MessageEvent<FromBand>) => {
    if (data.number !== number) return;
    if (data.kind === 'failed') show({ status: 'failed' });
    else if (data.kind === 'opened') {
      track = data.track;
      ask(firstSeconds);
      pump();
    } else {
      got = data.from + (data.stems[0]?.left.length ?? 0);
      if (begin === null) held.push(data);
      else schedule(data);
      if (state.status === 'loading') show({ status: 'ready' });
      if (begin === null && wantsToPlay) start();
      else pump();
    }
  });
  worker.addEventListener('error', () => show({ status: 'failed' }));

  const timer = setInterval(() => {
    pump();
    follow();
  }, everyMs);
  let frame = 0;
  /** Shows the bar that is heard: what leaves the loudspeaker now was handed out a little ago. */
  function follow(): void {
    cancelAnimationFrame(frame);
    if (begin === null || track === null) return;
    const { bars, length, loop } = track;
    let at = heardFrames() - (context.outputLatency || 0) * rate;
    if (length !== null && at > length) {
      player.stop();
      return;
    }
    if (loop !== null && at >= loop.to) at = loop.from + ((at - loop.to) % (loop.to - loop.from));
    const here = bars.findLastIndex((one) => one.frame <= at);
    const bar = bars[here];
    const nth = Math.max(0, here - bars.findIndex((one) => one.chorus >= 0));
    if (bar !== undefined) show({ bar: bar.written, chorus: bar.chorus, nth });
    frame = requestAnimationFrame(follow);
  }

  const player: Player = {
    context,
    output,
    state: () => state,
    subscribe(tell) {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    load(wished, gain) {
      wish = wished;
      wantsToPlay = wantsToPlay || state.status === 'playing';
      silence();
      level.gain.setTargetAtTime(gain * makeup, context.currentTime, 0.005);
      open();
    },
    async play() {
      if (begin !== null) return;
      wantsToPlay = true;
      await context.resume();
      if (wantsToPlay && begin === null && held.length > 0) start();
      else if (state.status === 'failed') open();
    },
    stop() {
      wantsToPlay = false;
      if (begin === null) return;
      silence();
      open(); // ready to begin again at once
    },
    balance(part, share) {
      shareByPart.set(part, share);
      gainOf(part).gain.setTargetAtTime(share, context.currentTime, 0.01);
    },
    volume(share) {
      output.gain.setTargetAtTime(share, context.currentTime, 0.01);
    },
    barOneAt() {
      const first = track?.bars.find((bar) => bar.written === 1);
      return begin === null || first === undefined ? null : (begin + first.frame) / rate;
    },
    close() {
      clearInterval(timer);
      cancelAnimationFrame(frame);
      worker.terminate();
      void context.close();
    },
  };
  return player;
}

/** What one start plays through; it fades out when stopped, while the next may begin. */
function createRun(level: AudioNode) {
  const fade = new GainNode(level.context);
  fade.connect(level);
  return { fade, gainByPart: new Map<PartName, GainNode>() };
}
