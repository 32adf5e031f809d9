import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  elapsedOf,
  formatClock,
  isRunOn,
  joinLogged,
  mostSeconds,
  pauseClock,
  readClock,
  type SegmentId,
  secondsOf,
  setClock,
  startClock,
  stoppedClock,
  writeClock,
} from './lesson-clock.ts';

const a = 'segment:a' as SegmentId;
const b = 'segment:b' as SegmentId;
const t0 = 1_780_000_000_000;

describe('a lesson clock', () => {
  it('counts from the start instant through a reload and a closed lid', () => {
    const kept = writeClock(startClock(stoppedClock, a, t0));
    expect(secondsOf(readClock(kept), a, t0 + 250_000)).toBe(250);
  });
  it('keeps each segment its own time when the lesson moves on', () => {
    let clock = startClock(stoppedClock, a, t0);
    clock = startClock(clock, b, t0 + 60_000);
    clock = startClock(clock, a, t0 + 90_000);
    clock = pauseClock(clock, t0 + 100_000);
    expect([secondsOf(clock, a, t0 + 999_000), secondsOf(clock, b, t0 + 999_000)]).toEqual([70, 30]);
  });
  it('starting what runs already changes nothing', () => {
    const clock = startClock(stoppedClock, a, t0);
    expect(startClock(clock, a, t0 + 5_000)).toBe(clock);
  });
  it('is never negative when the machine clock is set back', () => {
    expect(elapsedOf(startClock(stoppedClock, a, t0), a, t0 - 3_600_000)).toBe(0);
  });
  it('logs at most what the contract takes', () => {
    expect(secondsOf(startClock(stoppedClock, a, t0), a, t0 + 90_000_000)).toBe(mostSeconds);
  });
  it('can be put by hand, running on from there', () => {
    const clock = setClock(startClock(stoppedClock, a, t0), a, 300, t0 + 900_000);
    expect(secondsOf(clock, a, t0 + 910_000)).toBe(310);
  });
  it('takes over more that was logged elsewhere, but not less, and not under a running segment', () => {
    const clock = pauseClock(startClock(stoppedClock, a, t0), t0 + 60_000);
    expect(secondsOf(joinLogged(clock, [{ id: a, seconds: 200 }]), a, t0)).toBe(200);
    expect(joinLogged(clock, [{ id: a, seconds: 30 }])).toBe(clock);
    const running = startClock(stoppedClock, a, t0);
    expect(joinLogged(running, [{ id: a, seconds: 500 }])).toBe(running);
  });
  it('reads rubbish as a stopped clock', () => {
    for (const text of [
      null,
      '',
      '{',
      '3',
      '{"kept":4}',
      '{"kept":{"segment:a":"x"},"running":{"segment":3}}',
    ])
      expect(readClock(text)).toEqual(stoppedClock);
  });
  it('sees a forgotten clock', () => {
    expect(isRunOn(3 * 3600, 12, 30)).toBe(true);
    expect(isRunOn(25 * 60, 12, 30)).toBe(false);
  });
  it('shares out exactly the time between start and pause, however it is switched and reloaded (law)', () => {
    const step = fc.record({
      wait: fc.integer({ min: 0, max: 600_000 }),
      to: fc.constantFrom<SegmentId>(a, b),
      reload: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 30 }), (steps) => {
        let now = t0;
        let clock = startClock(stoppedClock, a, now);
        for (const { wait, to, reload } of steps) {
          now += wait;
          clock = startClock(reload ? readClock(writeClock(clock)) : clock, to, now);
        }
        clock = pauseClock(clock, now);
        expect(elapsedOf(clock, a, now) + elapsedOf(clock, b, now)).toBe(now - t0);
      }),
      { seed: 4 },
    );
  });
});

describe('formatClock', () => {
  it.each([
    [0, '0:00'],
    [59.9, '0:59'],
    [250, '4:10'],
    [3850, '1:04:10'],
    [-3, '0:00'],
  ])('%s s reads %s', (seconds, face) => expect(formatClock(seconds)).toBe(face));
});
