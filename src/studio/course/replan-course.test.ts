import { expect, test } from 'vitest';
import { present } from '#core';
import { formatMove, type Move } from '#planning';
import { anaCourse, day, id, openCourseStudio, type TestStudio } from '../testing/open-studio.contract.ts';
import { accumulateMoves, currentMoves } from './replan-course.ts';

const allSegments = (studio: TestStudio) =>
  studio.store.read((r) => r.list('segment', { where: { course: anaCourse } }));
const lessonAt = async (studio: TestStudio, at: number) =>
  present((await studio.lessons(anaCourse))[at], 'lesson');

test('[R-PLAN-1] planning again without a change moves nothing, with a pin and a taught lesson too', async () => {
  const studio = await openCourseStudio();
  const first = await lessonAt(studio, 0);
  const [walk] = (await studio.segments(first.id)).filter((s) => s.kind === 'work');
  await studio.done({
    type: 'segment.log',
    segment: present(walk, 'walk').id,
    seconds: 400,
    outcome: 'partly',
    share: 0.5,
  });
  await studio.done({ type: 'lesson.close', lesson: first.id, minutes: null });
  const work = (await studio.segments((await lessonAt(studio, 1)).id)).find((s) => s.kind === 'work');
  await studio.done({
    type: 'segment.pin',
    seen: await studio.revision(anaCourse),
    segment: present(work, 'work').id,
    pinned: true,
  });
  const before = await allSegments(studio);
  for (let again = 0; again < 2; again++) {
    const reply = await studio.done({
      type: 'course.replan',
      seen: await studio.revision(anaCourse),
      course: anaCourse,
    });
    expect(reply.courses[0]?.moved).toBe(0);
    expect(await allSegments(studio)).toEqual(before);
  }
});

test('[R-PLAN-1] work keeps its row and its note wherever it moves', async () => {
  const studio = await openCourseStudio();
  const first = await lessonAt(studio, 0);
  const clap = present(
    (await studio.segments(first.id)).find((s) => s.activity === 'clap-answers'),
    'clap',
  );
  await studio.done({ type: 'segment.write', segment: clap.id, base: '', text: 'with the blue drum' });
  await studio.done({ type: 'lesson.cancel', lesson: first.id, reason: 'ill' });
  const second = await lessonAt(studio, 1);
  expect((await studio.segments(second.id)).find((s) => s.id === clap.id)).toMatchObject({
    note: 'with the blue drum',
  });
});

test('[R-NOTE-KEPT] a note on work that falls out of the plan joins the note of its lesson', async () => {
  const studio = await openCourseStudio();
  const second = await lessonAt(studio, 1);
  const work = present(
    (await studio.segments(second.id)).find((s) => s.kind === 'work'),
    'work',
  );
  await studio.done({ type: 'segment.write', segment: work.id, base: '', text: 'ask for the echo' });
  await studio.done({
    type: 'courseUnit.remove',
    seen: await studio.revision(anaCourse),
    courseUnit: id('course-unit', 'ana-answers'),
  });
  expect((await lessonAt(studio, 1)).note).toBe(`${work.title}: ask for the echo`);
});

test('[R-MOVED] several moves of one piece become one; what came back drops out', () => {
  const move = (key: string, from: string | null, to: string | null): Move => ({
    key,
    title: key,
    from: from === null ? null : { date: day(from), minutes: 10 },
    to: to === null ? null : { date: day(to), minutes: 10 },
    because: { kind: 'madeRoom' },
  });
  const first = [
    move('a', '2026-09-07', '2026-09-14'),
    move('b', '2026-09-07', '2026-09-14'),
    move('c', null, '2026-09-14'),
  ];
  const later = [
    move('a', '2026-09-14', '2026-09-21'),
    move('b', '2026-09-14', '2026-09-07'),
    move('c', '2026-09-14', null),
    move('d', '2026-09-07', null),
  ];
  expect(accumulateMoves(first, later)).toEqual([
    move('a', '2026-09-07', '2026-09-21'),
    move('d', '2026-09-07', null),
  ]);
  const all = [
    move('work:a', '2026-09-07', '2026-09-21'),
    move('work:b', '2026-09-28', null),
    move('revisit:c', '2026-09-07', '2026-09-14'),
  ];
  expect(currentMoves(all, day('2026-09-15'), new Set(['work:b'])).map((m) => m.key)).toEqual(['work:a']);
});

test('[R-MOVED] of several moves told as one, the cause is true of the whole way', () => {
  type Because = Move['because'];
  const move = (from: string, to: string | null, because: Because): Move => ({
    key: 'work:a',
    title: 'Scale',
    from: { date: day(from), minutes: 10 },
    to: to === null ? null : { date: day(to), minutes: 10 },
    because,
  });
  const gone = (date: string): Because => ({ kind: 'lessonGone', date: day(date) });
  const told = (...steps: readonly Move[]) =>
    steps
      .reduce<readonly Move[]>((list, step) => accumulateMoves(list, [step]), [])
      .map((one) => formatMove(one));
  const slower = move('2026-12-10', '2026-12-24', { kind: 'slowerThanPlanned' });
  expect(told(slower, move('2026-12-24', '2027-01-14', gone('2026-12-24')))).toEqual([
    '“Scale” moved from 10 December to 14 January: in between it stood on 24 December, and there is no lesson then.',
  ]);
  const away = move('2026-12-10', '2026-12-17', gone('2026-12-10'));
  const toJanuary = move('2026-12-17', '2027-01-14', { kind: 'madeRoom' });
  expect(told(away, toJanuary)).toEqual([
    '“Scale” moved from 10 December to 14 January: no lesson on 10 December.',
  ]);
  const byHand = move('2026-12-17', '2027-01-14', { kind: 'byHand' });
  expect(told(away, byHand)).toEqual(['“Scale” moved from 10 December to 14 January: changed by hand.']);
  // Part of the way back: room is not why it comes later than at first.
  expect(told(slower, move('2026-12-24', '2026-12-17', { kind: 'madeRoom' }))).toEqual([
    '“Scale” moved from 10 December to 17 December: it went slower than planned.',
  ]);
  expect(told(away, move('2026-12-17', null, { kind: 'madeRoom' }))).toEqual([
    '“Scale” on 10 December falls away: there is no room left.',
  ]);
});
