import { describe, expect, it } from 'vitest';
import { readShares, type SegmentSaid, sayMore } from './segment-log.ts';

const nothing: SegmentSaid = { seconds: null, outcome: null, share: null };

describe('what is said of a segment', () => {
  it('keeps the outcome while the clock ticks on', () => {
    const done = sayMore(nothing, { outcome: 'partly', share: 0.5, seconds: 60 }).said;
    expect(sayMore(done, { seconds: 90 }).said).toEqual({ seconds: 90, outcome: 'partly', share: 0.5 });
  });
  it('drops the share with another outcome', () => {
    const partly = sayMore(nothing, { outcome: 'partly', share: 0.5 }).said;
    expect(sayMore(partly, { outcome: 'finished' }).said.share).toBeNull();
  });
  it('keeps the time when only an outcome is said', () => {
    expect(sayMore({ ...nothing, seconds: 40 }, { outcome: 'setAside', seconds: null }).said.seconds).toBe(
      40,
    );
  });
  it('knows when nothing new is said', () => {
    expect(sayMore({ ...nothing, seconds: 40 }, { seconds: 40 }).isNew).toBe(false);
    expect(sayMore(nothing, { seconds: 1 }).isNew).toBe(true);
  });
});

describe('readShares', () => {
  it('takes shares and leaves the rest', () => {
    expect([...readShares('{"segment:a":0.5,"segment:b":7,"segment:c":"x"}')]).toEqual([['segment:a', 0.5]]);
    expect(readShares('{').size).toBe(0);
    expect(readShares(null).size).toBe(0);
  });
});
