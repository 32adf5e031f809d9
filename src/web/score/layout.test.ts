import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BarView, CourseView, LessonBarView, SegmentView } from '#contract';
import { addDays, type Id } from '#core';
import { courseOf, lessonOf, monday, segmentOf } from './course.fixture.ts';
import type { Measure } from './fit-title.ts';
import { layoutScore, metrics, rowOf, type ScorePage } from './layout.ts';
import { focusLines, moveFocus } from './move-focus.ts';
import { barToTimes, isGiven } from './timeline.ts';

const measure: Measure = (text, size) => text.length * size * 0.52;
const pageOf = (width: number, barsPerSystem: number): ScorePage => ({
  width,
  names: width < 560 ? 68 : 124,
  barsPerSystem,
  measure,
  dateWords: (date) => [`Monday ${date}`, date, date.slice(8)],
});
const arbitraryPage = fc
  .tuple(fc.integer({ min: 300, max: 1800 }), fc.integer({ min: 1, max: 12 }))
  .map(([width, bars]) => pageOf(width, bars));
const runs = { numRuns: 300 };
const close = 0.01;

const titles = [
  'Long notes',
  'Two-bar answers over a drone',
  'Slurs',
  'Herring song, second verse',
  'Clap and say',
];

const arbitrarySegments = (lesson: number, minutes: number, strands: number) =>
  fc
    .array(
      fc.record({
        minutes: fc.integer({ min: 1, max: 15 }),
        row: fc.integer({ min: 0, max: strands }),
        title: fc.constantFrom(...titles),
        actual: fc.option(fc.integer({ min: 0, max: 25 })),
        outcome: fc.constantFrom<SegmentView['outcome']>(null, 'finished', 'partly', 'setAside', 'skipped'),
      }),
      { maxLength: 9 },
    )
    .map((drawn) => {
      const segments: SegmentView[] = [];
      let start = 0;
      for (const [i, one] of drawn.entries()) {
        if (start + one.minutes > minutes) break;
        segments.push(
          segmentOf({
            id: `segment:${lesson}-${i}` as Id<'segment'>,
            strand: one.row < strands ? (`strand:${one.row}` as Id<'strand'>) : null,
            title: one.title,
            start,
            minutes: one.minutes,
            actualMinutes: one.actual,
            outcome: one.outcome,
          }),
        );
        start += one.minutes;
      }
      return segments;
    });

const arbitraryBar = (n: number, strands: number): fc.Arbitrary<BarView> =>
  fc.oneof(
    {
      weight: 8,
      arbitrary: fc
        .record({
          minutes: fc.constantFrom(10, 20, 30, 45, 60, 240),
          status: fc.constantFrom<LessonBarView['status']>(
            'planned',
            'taught',
            'taught',
            'missed',
            'cancelled',
          ),
        })
        .chain(({ minutes, status }) =>
          arbitrarySegments(n, minutes, strands).map((segments) =>
            lessonOf(n, { minutes, status, segments, reason: status === 'missed' ? 'ill' : '' }),
          ),
        ),
    },
    {
      weight: 1,
      arbitrary: fc.constantFrom('Half-term', 'Harbour week and boat show').map((name) => ({
        kind: 'rest' as const,
        from: addDays(monday, 7 * (n - 1)),
        to: addDays(monday, 7 * (n - 1) + 6),
        name,
      })),
    },
  );

/** Courses of up to 30 bars of all kinds on one to five strands, with events and a today anywhere. */
const arbitraryCourse: fc.Arbitrary<CourseView> = fc
  .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 30 }))
  .chain(([strands, count]) =>
    fc.record({
      strands: fc.constant(strands),
      bars: fc.tuple(...Array.from({ length: count }, (_, i) => arbitraryBar(i + 1, strands))),
      today: fc.integer({ min: -10, max: 230 }),
      events: fc.array(fc.integer({ min: -10, max: 230 }), { maxLength: 3 }),
      deadlines: fc.array(fc.option(fc.integer({ min: 0, max: 230 })), { minLength: 5, maxLength: 5 }),
    }),
  )
  .map(({ strands, bars, today, events, deadlines }) =>
    courseOf({
      strands: Array.from({ length: strands }, (_, i) => ({
        id: `strand:${i}` as Id<'strand'>,
        name: ['Technique', 'Improvisation', 'Repertoire', 'Ear', 'Reading'][i] ?? '',
        ink: (i % 4) as 0 | 1 | 2 | 3,
        priority: i + 1,
        deadline: typeof deadlines[i] === 'number' ? addDays(monday, deadlines[i]) : null,
      })),
      bars,
      today: addDays(monday, today),
      events: events.map((day, i) => ({
        id: `event:${i}` as Id<'event'>,
        date: addDays(monday, day),
        title: 'Recital',
      })),
    }),
  );

describe('the laws of the score', () => {
  it('shows every bar once, in order, and systems follow one another', () => {
    fc.assert(
      fc.property(arbitraryCourse, arbitraryPage, (course, page) => {
        const bars = layoutScore(course, page).systems.flatMap((system) => system.bars);
        expect(bars.map((bar) => bar.source)).toEqual(course.bars);
        expect(bars.map((bar) => bar.index)).toEqual(course.bars.map((_, i) => i));
      }),
      runs,
    );
  });

  it('fills every system but the last from edge to edge, and never runs over', () => {
    fc.assert(
      fc.property(arbitraryCourse, arbitraryPage, (course, page) => {
        const { systems } = layoutScore(course, page);
        for (const [i, system] of systems.entries()) {
          let x = system.left;
          for (const bar of system.bars) {
            expect(Math.abs(bar.x - x)).toBeLessThan(close);
            expect(bar.width).toBeGreaterThan(0);
            x = bar.x + bar.width;
          }
          expect(Math.abs(system.right - x)).toBeLessThan(close);
          expect(x).toBeLessThanOrEqual(system.width + close);
          if (i < systems.length - 1) expect(Math.abs(system.width - 2 - x)).toBeLessThan(close);
        }
      }),
      runs,
    );
  });

  it('keeps blocks inside their bars, in the order of the lesson, apart on every row', () => {
    fc.assert(
      fc.property(arbitraryCourse, arbitraryPage, (course, page) => {
        for (const bar of layoutScore(course, page).systems.flatMap((system) => system.bars)) {
          let until = bar.x;
          for (const block of bar.blocks) {
            expect(block.x).toBeGreaterThanOrEqual(until - close);
            expect(block.width).toBeGreaterThan(0);
            until = block.x + block.width;
          }
          expect(until).toBeLessThanOrEqual(bar.x + bar.width + close);
        }
      }),
      runs,
    );
  });

  it('loses no segment: each is a block, or named among what was passed over', () => {
    fc.assert(
      fc.property(arbitraryCourse, arbitraryPage, (course, page) => {
        const bars = layoutScore(course, page).systems.flatMap((system) => system.bars);
        const shown = bars.flatMap((bar) => [
          ...bar.blocks.map((b) => b.segment.id),
          ...bar.skipped.map((s) => s.id),
        ]);
        const held = course.bars.flatMap((bar) =>
          bar.kind === 'lesson' ? bar.segments.map((s) => s.id) : [],
        );
        expect([...shown].sort()).toEqual([...held].sort());
      }),
      runs,
    );
  });

  it('sets titles inside the bar and never over the next title of the row', () => {
    fc.assert(
      fc.property(arbitraryCourse, arbitraryPage, (course, page) => {
        for (const bar of layoutScore(course, page).systems.flatMap((system) => system.bars)) {
          const until = new Map<number, number>();
          for (const block of bar.blocks) {
            if (block.label === null) continue;
            const { x, width, anchor } = block.label;
            const from = anchor === 'start' ? x : x - width;
            expect(from).toBeGreaterThanOrEqual(Math.max(bar.x, until.get(block.row) ?? 0) - close);
            expect(from + width).toBeLessThanOrEqual(bar.x + bar.width + close);
            until.set(block.row, from + width);
          }
        }
      }),
      runs,
    );
  });

  it('draws a minute equally wide for all lessons of a system', () => {
    fc.assert(
      fc.property(arbitraryCourse, arbitraryPage, (course, page) => {
        const pads = metrics.padLeft + metrics.padRight;
        for (const system of layoutScore(course, page).systems) {
          const perMinute = system.bars.flatMap((bar) =>
            bar.source.kind === 'lesson' && isGiven(bar.source) && bar.width > pads
              ? [(bar.width - pads) / barToTimes(bar.source).span]
              : [],
          );
          for (const one of perMinute) expect(Math.abs(one - (perMinute[0] ?? 0))).toBeLessThan(0.5);
        }
      }),
      runs,
    );
  });

  it('has one now and every event once, however it is broken', () => {
    fc.assert(
      fc.property(arbitraryCourse, arbitraryPage, (course, page) => {
        const { systems } = layoutScore(course, page);
        if (systems.length === 0) return;
        expect(systems.filter((system) => system.now !== null)).toHaveLength(1);
        const events = systems.flatMap((system) => system.barlines.flatMap((b) => b.events.map((e) => e.id)));
        expect([...events].sort()).toEqual(course.events.map((e) => e.id).sort());
      }),
      runs,
    );
  });
});

describe('deadlines', () => {
  it('stand once each on the line of their strand', () => {
    fc.assert(
      fc.property(arbitraryCourse, arbitraryPage, (course, page) => {
        const drawn = layoutScore(course, page).systems.flatMap((system) => system.deadlines);
        const wanted = course.strands.flatMap(({ deadline }, row) =>
          deadline === null || course.bars.length === 0 ? [] : [{ row, date: deadline }],
        );
        expect(drawn.map(({ row, date }) => ({ row, date })).sort((a, b) => a.row - b.row)).toEqual(wanted);
      }),
      runs,
    );
  });
});

describe('keys on the score', () => {
  it('reach everything from anywhere', () => {
    fc.assert(
      fc.property(arbitraryCourse, arbitraryPage, (course, page) => {
        const layout = layoutScore(course, page);
        const all = focusLines(layout).flatMap((line) => line.stops.map((stop) => stop.id));
        const first = moveFocus(layout, null, 'first');
        if (first === null) {
          expect(all).toEqual([]);
          return;
        }
        const seen = new Set([first]);
        for (const id of seen)
          for (const direction of ['left', 'right', 'up', 'down'] as const) {
            const next = moveFocus(layout, id, direction);
            if (next !== null) seen.add(next);
          }
        expect(seen.size).toBe(all.length);
      }),
      { numRuns: 60 },
    );
  });

  it('come back: left undoes right', () => {
    fc.assert(
      fc.property(arbitraryCourse, arbitraryPage, (course, page) => {
        const layout = layoutScore(course, page);
        for (const line of focusLines(layout))
          for (const { id } of line.stops) {
            const right = moveFocus(layout, id, 'right');
            if (right !== id) expect(moveFocus(layout, right, 'left')).toBe(id);
          }
      }),
      { numRuns: 60 },
    );
  });
});

describe('a revisit', () => {
  const skill = 'skill:steady' as Id<'skill'>;
  const revisit = segmentOf({ id: 'segment:r' as Id<'segment'>, kind: 'revisit', skill });
  const [technique, repertoire] = courseOf({}).strands;
  if (!technique || !repertoire) throw new Error('the fixture has two strands');
  const unit = {
    id: 'course-unit:u' as Id<'course-unit'>,
    unit: 'unit:u' as Id<'unit'>,
    title: 'Long notes',
    area: 'technique' as const,
    goal: '',
    strand: repertoire.id,
    position: 0,
    notBefore: null,
    notAfter: null,
    version: 1,
    libraryVersion: 1,
    adapted: false,
    status: 'begun' as const,
    share: 0,
    activities: [],
    checks: [{ skill, title: 'steady', wanted: 2 as const, level: null, lookFor: '', listenFor: [] }],
  };
  it('stands on the strand of the unit that checks its skill', () => {
    expect(rowOf(courseOf({ units: [unit] }), revisit)).toBe(1);
  });
  it('stands on its own strand when it has one', () => {
    expect(rowOf(courseOf({ units: [unit] }), { ...revisit, strand: technique.id })).toBe(0);
  });
  it('stands on the shared line when no unit checks it', () => {
    expect(rowOf(courseOf({}), revisit)).toBe(2);
  });
});

describe('a taught lesson', () => {
  const taught = lessonOf(1, {
    status: 'taught',
    segments: [
      segmentOf({
        id: 'segment:a' as Id<'segment'>,
        start: 0,
        minutes: 10,
        actualMinutes: 16,
        outcome: 'partly',
      }),
      segmentOf({ id: 'segment:b' as Id<'segment'>, start: 10, minutes: 8, outcome: 'skipped' }),
      segmentOf({
        id: 'segment:c' as Id<'segment'>,
        start: 18,
        minutes: 12,
        actualMinutes: 9,
        outcome: 'finished',
      }),
    ],
  });
  it('is drawn with the minutes it really took', () => {
    expect(barToTimes(taught).timed.map((t) => [t.segment.id, t.start, t.minutes])).toEqual([
      ['segment:a', 0, 16],
      ['segment:c', 16, 9],
    ]);
  });
  it('names what was passed over', () => {
    expect(barToTimes(taught).skipped.map((s) => s.id)).toEqual(['segment:b']);
  });
  it('is as wide as it took when it ran over', () => {
    const long = { ...taught, minutes: 20 };
    expect(barToTimes(long).span).toBe(25);
    const page = pageOf(1000, 3);
    const [system] = layoutScore(courseOf({ bars: [long, lessonOf(2, { minutes: 25 })] }), page).systems;
    const [one, two] = system?.bars ?? [];
    expect(one?.width).toBeCloseTo(two?.width ?? 0);
  });
});
