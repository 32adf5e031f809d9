import { describe, expect, test } from 'vitest';
import type { Command } from '#contract';
import { present } from '#core';
import { createMemoryStore, parseDump } from '#storage';
import {
  ana,
  anaCourse,
  ben,
  day,
  emptyTake,
  id,
  newStudent,
  openCourseStudio,
  skills,
  type TestStudio,
} from '../testing/open-studio.contract.ts';
import { readTables } from '../testing/random-command.contract.ts';
import { loadSound } from '../view/load-sound.ts';
import { viewTake, viewTakes } from '../view/view-takes.ts';

const first = id('take', 'first');
const consent: Command = {
  type: 'consent.give',
  consent: {
    id: id('consent', 'ana'),
    student: ana,
    givenBy: 'Ida Marsh',
    relation: 'mother',
    on: day('2026-09-07'),
    note: '',
  },
};
const keep = (take = first, data: string | null = 'UklGRg=='): Command => ({
  type: 'take.keep',
  take: emptyTake(take, ana),
  sound: data === null ? null : { id: id('sound', take.slice(5)), type: 'audio/webm;codecs=opus', data },
});
const undo = (change: string): Command => ({ type: 'undo', change: id('change', change) });
const takesOf = (s: TestStudio) =>
  s.store.read(async (r) => present(await viewTakes(r, ana, s.outside()), 'takes'));
const soundOf = (s: TestStudio, take = first) => s.store.read((r) => loadSound(r, take));

async function openTakes(): Promise<TestStudio> {
  const studio = await openCourseStudio();
  await studio.done(consent);
  return studio;
}

describe('[R-CONSENT] consent before a take of a minor is kept', () => {
  test('without it the take is refused and nothing is kept', async () => {
    const s = await openCourseStudio();
    expect((await takesOf(s)).isMinor).toBe(true);
    expect((await s.refused(keep())).message).toContain('consent');
    expect(await s.store.read((r) => r.list('sound'))).toEqual([]);
  });

  test('with it the take is kept; once withdrawn, the takes stay and no more are kept', async () => {
    const s = await openTakes();
    await s.done(keep());
    await s.done({ type: 'consent.withdraw', consent: id('consent', 'ana'), on: day('2026-09-07') });
    expect((await s.refused(keep(id('take', 'second')))).kind).toBe('NotAllowedNow');
    expect(await takesOf(s)).toMatchObject({
      consent: null,
      withdrawnOn: '2026-09-07',
      takes: [{ id: first }],
    });
  });

  test.each([
    ['born', { born: day('2008-09-07'), birthYear: null }, null],
    ['born a day later', { born: day('2008-09-08'), birthYear: null }, 'is under 18'],
    ['the year seventeen years ago', { born: null, birthYear: 2009 }, 'is under 18'],
    ['the year eighteen years ago', { born: null, birthYear: 2008 }, 'may be under 18'],
    ['the year nineteen years ago', { born: null, birthYear: 2007 }, null],
    ['no age at all', { born: null, birthYear: null }, 'counts as under 18'],
  ])('%s', async (_, age, why) => {
    const s = await openCourseStudio();
    await s.done({ type: 'student.add', student: { ...newStudent(ben, 'Ben', 2000), ...age } });
    const take = keep();
    if (take.type !== 'take.keep') throw new Error('a take');
    const reply = await s.send({ ...take, take: { ...take.take, student: ben } });
    expect(reply.ok ? null : reply.error.message).toEqual(
      why === null ? null : expect.stringContaining(`Ben ${why}`),
    );
  });

  test('consent cannot be given or withdrawn in days to come', async () => {
    const s = await openCourseStudio();
    if (consent.type !== 'consent.give') throw new Error('a consent');
    expect(
      (await s.refused({ ...consent, consent: { ...consent.consent, on: day('2026-09-08') } })).field,
    ).toBe('consent.on');
  });
});

describe('[R-TAKE-1] a take keeps what was heard', () => {
  test('its figures, context and sound come back as they were', async () => {
    const s = await openTakes();
    await s.done(keep());
    const { heard, evidence, context } = emptyTake(first, ana);
    expect(await s.store.read((r) => viewTake(r, first))).toMatchObject({ heard, evidence, context });
    expect(await soundOf(s)).toEqual({ type: 'audio/webm;codecs=opus', data: 'UklGRg==' });
    expect((await takesOf(s)).takes[0]?.soundBytes).toBe(4);
  });

  test('[R-ONCE] the same change sent twice keeps one', async () => {
    const s = await openTakes();
    const [a, b] = [await s.send(keep(), 'once'), await s.send(keep(), 'once')];
    expect(b).toEqual(a);
    expect((await takesOf(s)).takes).toHaveLength(1);
  });

  test('a context that cannot be is refused with its field', async () => {
    const s = await openTakes();
    const take = keep();
    if (take.type !== 'take.keep') throw new Error('a take');
    const context = { ...take.take.context, tempo: 4000 };
    expect((await s.refused({ ...take, take: { ...take.take, context } })).field).toBe('take.context.tempo');
  });
});

describe('[R-TAKE-5] [R-TAKE-6] what a take was played for', () => {
  const courseUnit = id('course-unit', 'ana-answers');
  const playedFor = async (activity: string | null): Promise<TestStudio> => {
    const s = await openTakes();
    const keeping = keep();
    if (keeping.type !== 'take.keep') throw new Error('a take');
    const practiceOf = present((await s.lessons(anaCourse))[0], 'a lesson').id;
    const played = activity === null ? null : { courseUnit, activity };
    await s.done({ ...keeping, take: { ...keeping.take, practiceOf, activity: played } });
    return s;
  };
  const viewOf = (s: TestStudio) => s.store.read(async (r) => present(await viewTake(r, first), 'the take'));
  const beat = { lookFor: 'feet and hands agree', listenFor: [{ kind: 'evenTiming', withinMs: 60 }] };

  test('recorded in practice: it names the lesson that set it, and lies on the day it was recorded', async () => {
    const s = await playedFor(null);
    const lesson = present((await s.lessons(anaCourse))[0], 'a lesson').id;
    expect(await viewOf(s)).toMatchObject({
      lesson: null,
      practiceOf: lesson,
      date: '2026-09-07',
      checks: [],
    });
    const stray = keep(id('take', 'second'));
    if (stray.type !== 'take.keep') throw new Error('a take');
    const practiceOf = id('lesson', 'of-nobody');
    const refused = await s.refused({ ...stray, take: { ...stray.take, practiceOf } });
    expect(refused).toMatchObject({
      kind: 'NotFound',
      message: expect.stringMatching(/^The lesson that set this practice is not in the studio: .*backup/),
    });
    // What was just played would be lost by it.
    expect(refused.message).not.toContain('Load the page');
  });

  test('it shows the checks of its activity that a take can show something of', async () => {
    expect(await viewOf(await playedFor('walk-the-beat'))).toMatchObject({
      develops: ['skill:steady-beat'],
      checks: [beat],
    });
    expect((await viewOf(await playedFor('play-answers'))).checks).toEqual([]);
  });

  test('without an activity, those of the skills it proves', async () => {
    const s = await playedFor(null);
    await s.done({
      type: 'observe',
      observation: id('observation', 'one'),
      course: anaCourse,
      student: ana,
      lesson: null,
      skill: id('skill', 'steady-beat'),
      level: 2,
      note: '',
      take: first,
    });
    expect((await viewOf(s)).checks).toMatchObject([{ title: 'steady beat', wanted: 2, ...beat }]);
  });
});

describe('[R-TAKE-2] [R-TAKE-3] discarding, deleting', () => {
  test('a discarded take comes back with its sound, and the levels with their proof', async () => {
    const s = await openTakes();
    await s.done(keep());
    await s.done({
      type: 'observe',
      observation: id('observation', 'one'),
      course: anaCourse,
      student: ana,
      lesson: null,
      skill: present(skills[0], 'a skill').id,
      level: 2,
      note: '',
      take: first,
    });
    const before = await s.store.read(readTables);
    await s.send({ type: 'take.discard', take: first }, 'discard');
    expect(await s.store.read((r) => r.list('observation'))).toMatchObject([{ level: 2, take: null }]);
    s.setToday('2026-09-13');
    await s.done(undo('discard'));
    const after = await s.store.read(readTables);
    expect(after.take).toEqual(before.take);
    expect(after.sound).toEqual(before.sound);
    expect(after.observation).toEqual(before.observation);
    expect((await takesOf(s)).takes[0]?.proves).toMatchObject([{ title: 'steady beat', level: 2 }]);
  });

  test('after seven days its sound is gone, and it comes back without', async () => {
    const s = await openTakes();
    await s.done(keep());
    await s.send({ type: 'take.discard', take: first }, 'discard');
    s.setToday('2026-09-14');
    await s.done({ type: 'student.add', student: newStudent(ben, 'Ben', 2012) });
    expect(await s.store.read((r) => r.list('soundData'))).toEqual([]);
    expect((await s.done(undo('discard'))).notices.join()).toContain('deleted for good');
    expect((await takesOf(s)).takes).toMatchObject([{ id: first, soundBytes: null }]);
  });

  test('keeping that was taken back leaves no sound behind either', async () => {
    const s = await openTakes();
    await s.send(keep(), 'keep');
    await s.done(undo('keep'));
    expect(await s.store.read((r) => r.list('sound'))).toMatchObject([{ unheldSince: '2026-09-07' }]);
  });

  test('a deleted sound is nowhere, and no undo brings it back', async () => {
    const s = await openTakes();
    await s.done(keep(first, 'U0VDUkVUU0VDUkVU'));
    expect(JSON.stringify(await s.store.dump())).toContain('U0VDUkVUU0VDUkVU');
    await s.send({ type: 'take.eraseSounds', takes: [first] }, 'erase');
    expect(JSON.stringify(await s.store.dump())).not.toContain('U0VDUkVUU0VDUkVU');
    expect((await s.refused(undo('erase'))).message).toContain('for good');
    expect((await takesOf(s)).takes).toMatchObject([{ id: first, soundBytes: null }]);
  });
});

test('[R-TAKE-4] a sound larger than may be kept is refused', async () => {
  const s = await openTakes();
  const fault = await s.refused(keep(first, 'A'.repeat(4 * Math.ceil((8 * 1024 * 1024 + 3) / 3))));
  expect(fault.field).toBe('sound.data');
});

describe('taking along', () => {
  test('an exported studio is read in again with every take and sound', async () => {
    const s = await openTakes();
    await s.done(keep());
    const dump = await s.store.dump();
    const read = parseDump(JSON.stringify(dump));
    expect(read).toEqual({ ok: true, value: dump });
    const other = await createMemoryStore(s.outside().clock);
    await other.load(dump);
    expect(await other.read((r) => loadSound(r, first))).toEqual(await soundOf(s));
    await other.close();
  });

  test('a studio exported before there were takes is read in, and its changes can be taken back', async () => {
    const s = await openCourseStudio();
    const skill = present(skills[0], 'a skill').id;
    const observe = {
      type: 'observe',
      course: anaCourse,
      student: ana,
      lesson: null,
      skill,
      note: '',
    } as const;
    await s.send({ ...observe, observation: id('observation', 'one'), level: 2 }, 'observe');
    const withoutTakes = (key: string, value: unknown) =>
      ['take', 'consent', 'sound', 'soundData'].includes(key) ? undefined : value;
    const read = parseDump(JSON.stringify(await s.store.dump(), withoutTakes));
    if (!read.ok) throw new Error(read.error);
    const other = await createMemoryStore(s.outside().clock);
    await other.load(read.value);
    const { carryOut } = await import('./carry-out.ts');
    const undone = await carryOut(other, { id: id('change', 'back'), command: undo('observe') }, s.outside());
    expect(undone.ok).toBe(true);
    expect(await other.read((r) => r.list('observation'))).toEqual([]);
    await other.close();
  });
});
