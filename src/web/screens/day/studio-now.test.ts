import { describe, expect, it } from 'vitest';
import type { PlainDate, PlainTime } from '#core';
import { studioNow } from './studio-now.ts';

const told = { date: '2026-12-31' as PlainDate, time: '23:40' as PlainTime };

describe('studioNow', () => {
  it('stands at the told time until a minute has passed', () => {
    expect(studioNow(told, 59_999)).toEqual(told);
    expect(studioNow(told, 60_000)).toEqual({ date: '2026-12-31', time: '23:41' });
  });
  it('goes over midnight into the next year', () => {
    expect(studioNow(told, 25 * 60_000)).toEqual({ date: '2027-01-01', time: '00:05' });
  });
  it('does not go backwards when the machine clock is set back', () => {
    expect(studioNow(told, -3_600_000)).toEqual(told);
  });
});
