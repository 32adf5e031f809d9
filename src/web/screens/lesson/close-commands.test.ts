import { describe, expect, it } from 'vitest';
import type { LessonSegmentView, LessonView } from '#contract';
import { type Closing, closeCommands } from './close-commands.ts';
import type { Proposal } from './close-proposals.ts';
import { segmentOf as segment } from './lesson-segment.fixture.ts';

const settled = (id: string, change: Partial<Proposal> = {}): Proposal => ({
  segment: `segment:${id}` as Proposal['segment'],
  outcome: 'finished',
  share: null,
  minutes: 10,
  timed: 'clock',
  because: 'clockFull',
  ...change,
});
const close = (segments: readonly LessonSegmentView[], closing: Partial<Closing>) =>
  closeCommands(
    { id: 'lesson:l' as LessonView['id'], segments },
    { settled: [], secondsById: new Map(), suggestedPractice: null, lasted: null, ...closing },
  );

describe('commands on closing a lesson', () => {
  it('keep the clock to the second where its minutes were left alone', () => {
    expect(
      close([segment('a')], { settled: [settled('a')], secondsById: new Map([['segment:a', 617]]) })[0],
    ).toEqual({
      type: 'segment.log',
      segment: 'segment:a',
      seconds: 617,
      outcome: 'finished',
      share: null,
    });
  });
  it('take whole minutes where the teacher put others', () => {
    const found = close([segment('a')], {
      settled: [settled('a', { minutes: 12, timed: 'hand' })],
      secondsById: new Map([['segment:a', 617]]),
    });
    expect(found[0]).toMatchObject({ seconds: 720 });
  });
  it('say nothing again of what is on record', () => {
    const found = close([segment('a', { outcome: 'finished', seconds: 600 })], {
      settled: [settled('a', { because: 'recorded' })],
    });
    expect(found.map((c) => c.type)).toEqual(['lesson.close']);
  });
  it('log no minutes that nobody measured', () => {
    const found = close([segment('a')], {
      settled: [settled('a', { timed: 'planned', because: 'asPlanned' })],
    });
    expect(found[0]).toMatchObject({ outcome: 'finished', seconds: null });
    const touched = close([segment('a', { seconds: 3 })], { settled: [settled('a', { timed: 'planned' })] });
    expect(touched[0]).toMatchObject({ seconds: 0 });
  });
  it('log no time for what was not reached', () => {
    const found = close([segment('a')], { settled: [settled('a', { outcome: 'skipped', minutes: 0 })] });
    expect(found[0]).toMatchObject({ outcome: 'skipped', seconds: null });
  });
  it('set the suggested practice when none was written, and close last', () => {
    const found = close([segment('a')], { settled: [settled('a')], suggestedPractice: 'Slowly', lasted: 40 });
    expect(found.map((c) => c.type)).toEqual(['segment.log', 'lesson.write', 'lesson.close']);
    expect(found.at(-1)).toMatchObject({ minutes: 40 });
  });
  it('set no empty practice', () => {
    expect(close([], { suggestedPractice: ' ' }).map((c) => c.type)).toEqual(['lesson.close']);
  });
});
