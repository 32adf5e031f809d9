// A file or a kept sound as samples: decoded by the browser, mixed to one channel.

import { longestTake } from '#contract';
import { err, ok, type Result } from '#core';

export interface Samples {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
}

/** What hearing works at; the browser converts to it while decoding. */
const decodingRate = 44_100;
/** Larger files are not read at all: even plain WAV of the longest take is smaller. */
const mostFileBytes = 400 * 1024 * 1024;

export type DecodeFault = 'tooLarge' | 'tooLong' | 'unreadable' | 'empty';

/** Decodes sound in any form the browser knows. */
export async function decodeSound(file: Blob): Promise<Result<Samples, DecodeFault>> {
  if (file.size === 0) return err('empty');
  if (file.size > mostFileBytes) return err('tooLarge');
  let buffer: AudioBuffer;
  try {
    const bytes = await file.arrayBuffer();
    buffer = await new OfflineAudioContext(1, 1, decodingRate).decodeAudioData(bytes);
  } catch {
    return err('unreadable');
  }
  if (buffer.duration > longestTake) return err('tooLong');
  if (buffer.length === 0) return err('empty');
  return ok({ samples: mixToMono(buffer), sampleRate: buffer.sampleRate });
}

function mixToMono(buffer: AudioBuffer): Float32Array<ArrayBuffer> {
  const mixed = new Float32Array(buffer.length);
  for (let channel = 0; channel < buffer.numberOfChannels; channel++) {
    const samples = buffer.getChannelData(channel);
    for (let i = 0; i < mixed.length; i++)
      mixed[i] = (mixed[i] ?? 0) + (samples[i] ?? 0) / buffer.numberOfChannels;
  }
  return mixed;
}
