// Source: Multimedia Programming Interface and Data Specifications 1.0 (IBM and Microsoft 1991), RIFF/WAVE; format code 3 is
// IEEE float and 0xFFFE extensible (mmreg.h). Headers are written byte by byte here, apart from our own writer.
import { expect, test } from 'vitest';
import { parseWav } from '../../src/cli/wav/parse-wav.ts';

interface Header {
  readonly code?: number;
  readonly bits?: number;
  readonly channels?: number;
  readonly rate?: number;
  readonly dataSize?: number;
  readonly before?: readonly number[];
}

function wav(data: readonly number[], header: Header = {}): Uint8Array {
  const { code = 1, bits = 16, channels = 1, rate = 44_100, dataSize = data.length, before = [] } = header;
  const u16 = (n: number) => [n & 255, (n >> 8) & 255];
  const u32 = (n: number) => [n & 255, (n >>> 8) & 255, (n >>> 16) & 255, (n >>> 24) & 255];
  const text = (word: string) => [...word].map((letter) => letter.charCodeAt(0));
  const frame = (channels * bits) / 8;
  const fmt =
    code === 0xfffe
      ? [
          ...u16(code),
          ...u16(channels),
          ...u32(rate),
          ...u32(rate * frame),
          ...u16(frame),
          ...u16(bits),
          ...u16(22),
          ...u16(bits),
          ...u32(4),
          ...u16(1),
          ...new Array<number>(14).fill(0),
        ]
      : [...u16(code), ...u16(channels), ...u32(rate), ...u32(rate * frame), ...u16(frame), ...u16(bits)];
  const chunks = [
    ...text('fmt '),
    ...u32(fmt.length),
    ...fmt,
    ...before,
    ...text('data'),
    ...u32(dataSize),
    ...data,
  ];
  return Uint8Array.from([...text('RIFF'), ...u32(4 + chunks.length), ...text('WAVE'), ...chunks]);
}

function floatBytes(values: readonly number[], size: 4 | 8): number[] {
  const view = new DataView(new ArrayBuffer(values.length * size));
  for (const [i, value] of values.entries())
    if (size === 4) view.setFloat32(i * 4, value, true);
    else view.setFloat64(i * 8, value, true);
  return [...new Uint8Array(view.buffer)];
}

function samplesOf(bytes: Uint8Array): readonly number[] {
  const sound = parseWav(bytes);
  if (!sound.ok) throw new Error(sound.error);
  return [...sound.value.samples];
}

test.each([
  ['8-bit, silence at 128', [128, 192, 64], { bits: 8 }, [0, 0.5, -0.5]],
  ['16-bit', [0, 0, 0, 64, 0, 192], {}, [0, 0.5, -0.5]],
  ['24-bit', [0, 0, 0, 0, 0, 64, 0, 0, 192], { bits: 24 }, [0, 0.5, -0.5]],
  ['32-bit', [0, 0, 0, 64, 0, 0, 0, 192], { bits: 32 }, [0.5, -0.5]],
  ['float', floatBytes([0.25, -1], 4), { code: 3, bits: 32 }, [0.25, -1]],
  ['double', floatBytes([0.25, -1], 8), { code: 3, bits: 64 }, [0.25, -1]],
  ['extensible', [0, 64], { code: 0xfffe }, [0.5]],
  ['stereo is averaged', [0, 64, 0, 192, 0, 64, 0, 64], { channels: 2 }, [0, 0.5]],
  [
    'a chunk of odd size before the sound is stepped over',
    [0, 64],
    { before: [76, 73, 83, 84, 3, 0, 0, 0, 1, 2, 3, 0] },
    [0.5],
  ],
  ['a size left open is the rest of the file', [0, 64, 0, 192], { dataSize: 0xffffffff }, [0.5, -0.5]],
] as const)('%s', (_name, data, header, expected) => {
  expect(samplesOf(wav(data, header))).toEqual(expected);
});

test('what is no number is silence', () => {
  expect(
    samplesOf(wav(floatBytes([Number.NaN, Number.POSITIVE_INFINITY, 0.5], 4), { code: 3, bits: 32 })),
  ).toEqual([0, 0, 0.5]);
});

test.each([
  ['empty', new Uint8Array(0), /too few/],
  ['another file', Uint8Array.from([...'{ "tempo": 100 }'].map((c) => c.charCodeAt(0))), /not a WAV/],
  ['no sound', wav([]), /no sound/],
  ['cut off', wav([0, 64], { dataSize: 88_200 }), /cut off/],
  ['compressed', wav([0, 64], { code: 85 }), /not read/],
  ['no channels', wav([0, 64], { channels: 0 }), /channels|contradicts/],
  ['an impossible rate', wav([0, 64], { rate: 3 }), /samples a second/],
] as const)('%s is refused in a sentence', (_name, bytes, message) => {
  const sound = parseWav(bytes);
  expect(sound.ok).toBe(false);
  expect(!sound.ok && sound.error).toMatch(message);
});

test('no prefix of a file and no flipped byte of its header throws', () => {
  const whole = wav([0, 64, 0, 192, 0, 64, 0, 64], { channels: 2 });
  for (let length = 0; length <= whole.length; length++)
    expect(() => parseWav(whole.slice(0, length))).not.toThrow();
  for (let at = 0; at < 44; at++)
    for (const value of [0, 1, 127, 128, 255]) {
      const broken = Uint8Array.from(whole);
      broken[at] = value;
      expect(() => parseWav(broken)).not.toThrow();
    }
});
