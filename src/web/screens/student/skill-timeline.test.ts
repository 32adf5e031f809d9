import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Id, type PlainDate } from '#core';
import { monthsOf, notesOf, spanOf } from './skill-timeline.ts';

const day = (text: string) => text as PlainDate;
const span = { from: day('2026-09-15'), to: day('2026-11-25') };

describe('the small staff of a skill', () => {
  it('marks the months between its ends', () => {
    expect(monthsOf(span).map((month) => month.date)).toEqual(['2026-10-01', '2026-11-01']);
    expect(monthsOf({ from: day('2026-12-31'), to: day('2027-01-01') }).map((m) => m.date)).toEqual([
      '2027-01-01',
    ]);
  });

  it('begins with the first observation of any skill when that is earlier', () => {
    const history = [
      {
        observation: 'observation:a' as Id<'observation'>,
        date: day('2026-08-02'),
        level: 1 as const,
        note: '',
        lesson: null,
        take: null,
      },
    ];
    expect(spanOf([{ history }], day('2026-11-25'), day('2026-10-28')).from).toBe('2026-08-02');
    expect(spanOf([], day('2026-11-25'), day('2026-10-28')).from).toBe('2026-10-28');
  });

  it('keeps notes on the line, in order of time', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 71 }), { maxLength: 12 }), (days) => {
        const history = days.map((n, i) => ({
          observation: `observation:${i}` as Id<'observation'>,
          date: addDays(span.from, n),
          level: (i % 5) as 0 | 1 | 2 | 3 | 4,
          note: '',
          lesson: null,
          take: null,
        }));
        const notes = notesOf(history, span, 0.02);
        expect(notes).toHaveLength(days.length);
        for (const [i, note] of notes.entries()) {
          expect(note.x).toBeGreaterThanOrEqual(notes[i - 1]?.x ?? 0);
          expect(note.x).toBeLessThanOrEqual(1);
        }
      }),
    );
  });
});
