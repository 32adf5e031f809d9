// The band plays here, away from the page: each part by itself, so that the page can balance them while they sound.

import { type Arrangement, arrange, loopSpec, loopTicks, type PartName } from '#music';
import { type Band, type BandTrack, createBand, createTimeMap } from '#sound';
import type { FromBand, OpenTrack, Stem, ToBand, TrackWish } from './stem-messages.ts';

const bankAddress = new URL('../../../dist/sound/band.sf3', import.meta.url);
let bank: Promise<Uint8Array> | null = null;
const bandsByRate = new Map<number, Promise<Band>>();

interface Playing {
  readonly number: number;
  readonly parts: readonly { readonly name: PartName; readonly track: BandTrack }[];
  done: number;
}
let playing: Playing | null = null;

async function loadBank(): Promise<Uint8Array> {
  const answer = await fetch(bankAddress);
  if (!answer.ok) throw new Error(`the band's sounds: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}

function bandAt(sampleRate: number): Promise<Band> {
  bank ??= loadBank();
  const known = bandsByRate.get(sampleRate) ?? bank.then((bytes) => createBand(bytes, sampleRate));
  bandsByRate.set(sampleRate, known);
  return known;
}

const say = (message: FromBand, moved: Transferable[] = []) => postMessage(message, { transfer: moved });

async function open(number: number, sampleRate: number, wish: TrackWish): Promise<void> {
  const band = await bandAt(sampleRate);
  const spec = wish.loop === null ? wish.spec : loopSpec(wish.spec, wish.loop.first, wish.loop.last);
  const arrangement = arrange(spec, wish.seed);
  const loop = wish.loop === null ? null : loopTicks(spec, arrangement);
  const parts = await Promise.all(
    arrangement.parts.map(async (part) => ({
      name: part.name,
      track: await band.play({ ...arrangement, parts: [part] }, loop ?? undefined),
    })),
  );
  if (number < newest) return; // another track has been wished for meanwhile
  playing = { number, parts, done: 0 };
  say({
    kind: 'opened',
    number,
    track: describe(arrangement, sampleRate, loop, parts[0]?.track.length ?? 0),
  });
}

function describe(
  arrangement: Arrangement,
  sampleRate: number,
  loop: { readonly from: number; readonly to: number } | null,
  length: number,
): OpenTrack {
  const seconds = createTimeMap(arrangement);
  const frame = (tick: number) => Math.round(seconds(tick) * sampleRate);
  return {
    bars: arrangement.bars.map(({ tick, written, chorus, role }) => ({
      frame: frame(tick),
      written,
      chorus,
      role,
    })),
    length: loop === null ? length : null,
    loop: loop === null ? null : { from: frame(loop.from), to: frame(loop.to) },
  };
}

function render(track: Playing, frames: number): void {
  const stems = track.parts.map(({ name, track: part }): Stem => {
    const { left, right } = part.next(frames);
    return { name, left: new Float32Array(left), right: new Float32Array(right) };
  });
  const from = track.done;
  track.done += stems[0]?.left.length ?? 0;
  say(
    { kind: 'piece', number: track.number, from, stems },
    stems.flatMap((stem) => [stem.left.buffer, stem.right.buffer]),
  );
}

let newest = 0;
addEventListener('message', ({ data }: MessageEvent<ToBand>) => {
  if (data.kind === 'render') {
    if (playing?.number === data.number) render(playing, data.frames);
    return;
  }
  newest = data.number;
  open(data.number, data.sampleRate, data.wish).catch((fault: unknown) => {
    bank = null; // a bank that could not be fetched is asked for anew
    bandsByRate.clear();
    say({ kind: 'failed', number: data.number });
    throw fault;
  });
});
