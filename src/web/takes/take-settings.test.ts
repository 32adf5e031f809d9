import { describe, expect, test } from 'vitest';
import { parseTakeContext } from '#listening';
import {
  bandOf,
  beatsPerBar,
  readScaleText,
  settingsOfFile,
  settingsToContext,
  suggestSettings,
} from './take-settings.ts';

const backing = { kind: 'backing', chart: '| Dm7 | G7 | C | C |', tempo: 132, feel: 'swing', countIn: 2 };

describe('what an activity suggests', () => {
  test('its backing track, where it has one', () => {
    const settings = suggestSettings([null, { kind: 'scale' }, backing], 'clarinet_bb');
    expect(settings).toMatchObject({ company: 'band', tempo: 132, instrument: 'clarinet_bb' });
    expect(bandOf(settings)).toMatchObject({ tempo: 132, feel: 'swing', countIn: 1, tempoStep: 0 });
  });

  test('its chords as they sound, where the track is moved to another key', () => {
    const settings = suggestSettings([{ ...backing, transpose: 2 }], 'clarinet_bb');
    expect(settings.chart).toContain('Em7');
    expect(bandOf(settings)).toMatchObject({ transpose: 0, chart: expect.stringContaining('Em7') });
  });

  test('else a click', () => {
    expect(suggestSettings([null, { kind: 'scale' }], null)).toMatchObject({ company: 'click', chart: '' });
  });
});

describe('the context of a take', () => {
  const settings = { ...suggestSettings([], 'flute'), scale: 'Bb major pentatonic', tempo: 96 };

  test('holds tempo and the place of bar 1, and can be read', () => {
    const context = settingsToContext(settings, 2.5);
    expect(context).toMatchObject({
      tempo: 96,
      offsetS: 2.5,
      scale: { tonic: 'Bb', name: 'major pentatonic' },
    });
    expect(parseTakeContext(context).ok).toBe(true);
  });

  test('holds neither when it was played at no set tempo', () => {
    expect(settingsToContext({ ...settings, company: 'nothing' }, null)).toMatchObject({
      tempo: null,
      offsetS: null,
    });
  });

  test('tells a file no tempo that was only proposed', () => {
    expect(settingsToContext(settingsOfFile(settings), null).tempo).toBeNull();
    expect(settingsToContext(settingsOfFile({ ...settings, isTempoTold: true }), null).tempo).toBe(96);
    expect(settingsToContext(settingsOfFile(suggestSettings([backing], null)), null).tempo).toBe(132);
  });

  test('takes the metre of the band’s feel', () => {
    const waltz = suggestSettings([{ ...backing, feel: 'waltz' }], null);
    expect(settingsToContext(waltz, null).metre).toEqual([3, 4]);
    expect(settingsToContext(suggestSettings([backing], null), null).metre).toEqual([4, 4]);
  });
});

test('no band without chords that can be read', () => {
  expect(bandOf({ ...suggestSettings([], null), chart: '' })).toBeNull();
  expect(bandOf({ ...suggestSettings([], null), chart: 'H#x | ?' })).toBeNull();
});

test.each([
  ['D dorian', { tonic: 'D', name: 'dorian' }],
  ['C', { tonic: 'C', name: 'major' }],
  ['  ', null],
])('the scale %j', (text, scale) => expect(readScaleText(text)).toEqual(scale));

// Compound metres are counted in dotted beats (common practice, no source).
test.each([
  [[4, 4], 4],
  [[6, 8], 2],
  [[12, 8], 4],
  [[5, 4], 5],
] as const)('beats of %j', (metre, beats) => expect(beatsPerBar(metre)).toBe(beats));
