import { describe, expect, it } from 'vitest';
import type { LessonSegmentView } from '#contract';
import { openingSegment, segmentBeside } from './shown-segment.ts';

type Logged = Pick<LessonSegmentView, 'id' | 'outcome' | 'seconds'>;
const segment = (id: string, seconds: number | null = null, outcome: Logged['outcome'] = null): Logged => ({
  id: `segment:${id}` as Logged['id'],
  seconds,
  outcome,
});

describe('openingSegment', () => {
  it('opens a fresh lesson at its first segment', () => {
    expect(openingSegment([segment('a'), segment('b')], null)).toBe('segment:a');
  });
  it('goes on where the clock runs', () => {
    expect(openingSegment([segment('a', 60), segment('b')], 'segment:b' as Logged['id'])).toBe('segment:b');
  });
  it('goes on at what was begun and not judged', () => {
    expect(openingSegment([segment('a', 60, 'finished'), segment('b', 20), segment('c')], null)).toBe(
      'segment:b',
    );
  });
  it('goes on after what was judged, and stays at the last', () => {
    expect(openingSegment([segment('a', 60, 'finished'), segment('b')], null)).toBe('segment:b');
    expect(openingSegment([segment('a', 60, 'finished')], null)).toBe('segment:a');
  });
  it('has nothing to open in an empty lesson', () => {
    expect(openingSegment([], null)).toBeNull();
  });
});

describe('segmentBeside', () => {
  const all = [segment('a'), segment('b')];
  it('turns to the next and stops at the ends', () => {
    expect(segmentBeside(all, 'segment:a', 1)?.id).toBe('segment:b');
    expect(segmentBeside(all, 'segment:b', 1)).toBeNull();
    expect(segmentBeside(all, 'segment:a', -1)).toBeNull();
    expect(segmentBeside(all, 'segment:gone', 1)).toBeNull();
  });
});
