// For tests: commands a teacher might send next, mostly sensible, sometimes late or out of place.

import type { Command } from '#contract';
import {
  addDays,
  createId,
  type PlainDate,
  type PlainTime,
  type Random,
  randomInteger,
  type Weekday,
} from '#core';
import type { Level } from '#planning';
import type { Reader, StudioDump } from '#studio';
import { activity, emptyTake, newStudent, strandMain, unit } from './open-studio.contract.ts';

type Tables = StudioDump['tables'];

const names = [
  'student',
  'group',
  'course',
  'courseUnit',
  'unit',
  'unitVersion',
  'skill',
  'term',
  'holiday',
  'slot',
  'event',
  'lesson',
  'segment',
  'lessonMaterial',
  'observation',
  'setAside',
  'family',
  'studio',
  'consent',
  'sound',
  'soundData',
  'take',
] as const;

/** All rows of all tables. */
export async function readTables(reader: Reader): Promise<Tables> {
  const entries: [string, unknown][] = [];
  for (const name of names) entries.push([name, await reader.list(name)]);
  return Object.fromEntries(entries) as unknown as Tables;
}

/** A command for the studio as it stands; null when the kind drawn has nothing to work on. */
export function randomCommand(
  tables: Tables,
  changes: readonly string[],
  today: PlainDate,
  random: Random,
): Command | null {
  const whole = (low: number, high: number) => randomInteger(random, low, high);
  const pick = <T>(items: readonly T[]): T | undefined => items[whole(0, items.length - 1)];
  const chance = (share: number) => random.next() < share;
  const day = (low: number, high: number) => addDays(today, whole(low, high));
  const time = () => `${String(whole(9, 18)).padStart(2, '0')}:${pick(['00', '15', '30'])}` as PlainTime;
  const minutes = () => pick([20, 30, 45, 60]) ?? 30;
  const level = () => whole(0, 4) as Level;
  const course = pick(tables.course);
  const seen = chance(0.95) ? (course?.revision ?? 0) : Math.max(0, (course?.revision ?? 1) - 1);
  const lessons = tables.lesson.filter((l) => l.course === course?.id);
  // Mostly the lessons around today.
  const near = lessons.filter((l) => l.date >= addDays(today, -15) && l.date <= addDays(today, 22));
  const lesson = pick(chance(0.8) && near.length > 0 ? near : lessons);
  const past = pick(lessons.filter((l) => l.date <= today && l.status === 'planned'));
  const segments = tables.segment.filter((s) => s.lesson === lesson?.id);
  const segment = pick(
    chance(0.85) ? segments.filter((s) => s.kind === 'work' || s.kind === 'revisit') : segments,
  );
  const courseUnit = pick(tables.courseUnit.filter((u) => u.course === course?.id));
  const someActivity = pick([
    ...(courseUnit?.document.activities ?? []),
    ...(courseUnit?.document.extensions ?? []),
  ]);
  const student = pick(tables.student);
  const skill = pick(tables.skill);
  /** Mostly one student, sometimes a group. */
  const who = () => {
    const group = chance(0.25) ? pick(tables.group) : undefined;
    return { student: group ? null : (student?.id ?? null), group: group?.id ?? null };
  };
  const text = () => pick(['', 'good', 'slower next time', 'asked for the duet']) ?? '';

  const makers: readonly (() => Command | null | undefined)[] = [
    () => ({
      type: 'student.add',
      student: newStudent(createId('student', random), pick(['Rui', 'Eva', 'Tom']) ?? '', whole(1950, 2020)),
    }),
    () =>
      student && {
        type: 'student.change',
        seen: student.revision,
        student: {
          ...newStudent(student.id, student.name, whole(1950, 2020)),
          family: chance(0.5) ? student.family : null,
        },
      },
    () =>
      student && chance(0.3) ? { type: 'student.remove', seen: student.revision, student: student.id } : null,
    () =>
      student &&
      ({
        type: student.left === null ? 'student.leave' : 'student.return',
        seen: student.revision,
        student: student.id,
        ...(student.left === null ? { on: day(-3, 40) } : {}),
      } as Command),
    () => {
      const sibling = pick(tables.student);
      return (
        student &&
        sibling && {
          type: 'family.join',
          family: pick(tables.family)?.id ?? createId('family', random),
          students: [student.id, sibling.id],
          ...(chance(0.5) ? { contacts: [{ name: 'Bea', relation: 'mother', phone: '', email: '' }] } : {}),
        }
      );
    },
    () => {
      const family = pick(tables.family);
      return (
        family && {
          type: 'family.change',
          seen: family.revision,
          family: family.id,
          contacts: [
            { name: pick(['Bea', 'Con']) ?? '', relation: '', phone: String(whole(1, 9)), email: '' },
          ],
        }
      );
    },
    () =>
      student && {
        type: 'group.put',
        seen: 0,
        group: {
          id: createId('group', random),
          name: 'Duo',
          members: [...new Set([student.id, pick(tables.student)?.id ?? student.id])],
        },
      },
    () => {
      const group = pick(tables.group);
      return group && { type: 'group.remove', seen: group.revision, group: group.id };
    },
    () => ({
      type: 'term.put',
      term: {
        id: pick(tables.term)?.id ?? createId('term', random),
        name: 'Term',
        starts: day(-60, 0),
        ends: day(10, 120),
      },
    }),
    () => ({
      type: 'holiday.putMany',
      holidays: [
        {
          id: createId('holiday', random),
          name: 'Days off',
          starts: day(-5, 30),
          ends: day(0, 40),
          source: '',
        },
      ],
    }),
    () => {
      const holiday = pick(tables.holiday);
      return holiday && { type: 'holiday.remove', holiday: holiday.id };
    },
    () =>
      student && {
        type: 'course.open',
        course: {
          id: createId('course', random),
          ...who(),
          instrument: 'piano',
          stage: 'beginner',
          strands: [
            { id: strandMain, name: 'Main', ink: 0, priority: 1, deadline: chance(0.3) ? day(5, 60) : null },
          ],
        },
        slot: {
          id: createId('slot', random),
          weekday: whole(1, 7) as Weekday,
          time: time(),
          minutes: minutes(),
          starts: day(-30, 10),
          ends: null,
        },
      },
    () =>
      course && {
        type: 'course.change',
        seen,
        course: course.id,
        settings: { ...course.settings, revisit: whole(0, 10), recap: whole(0, 6), settlingIn: whole(0, 4) },
      },
    () => course && { type: 'course.end', seen, course: course.id, on: day(5, 60) },
    () => {
      const slot = pick(tables.slot.filter((s) => s.course === course?.id));
      return (
        course && {
          type: 'slot.put',
          seen,
          course: course.id,
          slot: {
            id: slot?.id ?? createId('slot', random),
            weekday: whole(1, 5) as Weekday,
            time: time(),
            minutes: minutes(),
            starts: day(-30, 5),
            ends: null,
          },
        }
      );
    },
    () => {
      const slot = pick(tables.slot.filter((s) => s.course === course?.id));
      return course && slot && { type: 'slot.remove', seen, course: course.id, slot: slot.id };
    },
    () =>
      course && {
        type: 'event.put',
        seen,
        course: course.id,
        event: { id: createId('event', random), date: day(0, 60), title: 'Recital' },
      },
    () => course && { type: 'course.replan', seen, course: course.id },
    () => course && { type: 'course.looked', course: course.id },
    () =>
      course && {
        type: 'courseUnit.give',
        seen,
        course: course.id,
        courseUnit: createId('course-unit', random),
        unit: pick(tables.unit)?.id ?? unit.id,
        strand: strandMain,
        position: whole(0, 2),
        notBefore: chance(0.2) ? day(0, 30) : null,
      },
    () =>
      courseUnit && {
        type: 'courseUnit.change',
        seen,
        courseUnit: courseUnit.id,
        position: whole(0, 2),
        document: {
          ...courseUnit.document,
          activities: [
            ...courseUnit.document.activities,
            activity(`extra-${whole(0, 9)}`, 'steady-beat', whole(3, 20)),
          ],
        },
      },
    () => courseUnit && { type: 'courseUnit.remove', seen, courseUnit: courseUnit.id },
    () => courseUnit && { type: 'courseUnit.takeIntoLibrary', seen, courseUnit: courseUnit.id },
    () => courseUnit && { type: 'courseUnit.takeFromLibrary', seen, courseUnit: courseUnit.id },
    () => {
      const saved = pick(tables.unit);
      return (
        saved && {
          type: 'unit.save',
          seenVersion: saved.version,
          document: { ...saved.document, title: `${saved.title.slice(0, 80)}!` },
        }
      );
    },
    () => ({
      type: 'lesson.add',
      seen,
      course: course?.id ?? createId('course', random),
      lesson: { id: createId('lesson', random), date: day(0, 40), time: time(), minutes: minutes() },
    }),
    () => lesson && { type: 'lesson.cancel', lesson: lesson.id, reason: text() },
    () => lesson && { type: 'lesson.miss', lesson: lesson.id, reason: text() },
    () => lesson && { type: 'lesson.restore', lesson: lesson.id },
    () =>
      lesson && {
        type: 'lesson.move',
        lesson: lesson.id,
        date: day(-2, 30),
        time: time(),
        minutes: minutes(),
      },
    () => {
      const members = tables.group.find((g) => g.id === course?.group)?.members ?? [];
      const absent = members.filter(() => chance(0.4));
      return lesson && { type: 'lesson.absent', lesson: lesson.id, absent };
    },
    () => lesson && { type: 'lesson.bar', lesson: lesson.id, barred: chance(0.5) },
    () =>
      lesson && {
        type: 'lesson.write',
        lesson: lesson.id,
        field: 'note',
        base: chance(0.5) ? lesson.note : text(),
        text: text(),
      },
    ...Array.from(
      { length: 2 },
      () => () =>
        lesson && {
          type: 'material.keep' as const,
          lesson: lesson.id,
          material: {
            id: createId('material', random),
            title: 'Ladder',
            spec: chance(0.5) ? { kind: 'rhythm' } : { kind: 'backing', chart: '| Dm7 | G7 |' },
            seed: whole(0, 9),
          },
        },
    ),
    () => {
      const material = pick(tables.lessonMaterial);
      return material && { type: 'material.remove', material: material.id };
    },
    () => segment && { type: 'segment.write', segment: segment.id, base: segment.note, text: text() },
    ...Array.from(
      { length: 4 },
      () => () =>
        segment && {
          type: 'segment.log' as const,
          segment: segment.id,
          seconds: chance(0.7) ? whole(0, 1800) : null,
          outcome: pick(['finished', 'partly', 'setAside', 'skipped', null] as const) ?? null,
          share: chance(0.4) ? random.next() : null,
        },
    ),
    ...Array.from(
      { length: 2 },
      () => () =>
        course &&
        skill && {
          type: 'observe' as const,
          observation: createId('observation', random),
          course: course.id,
          student: null,
          lesson: chance(0.5) ? (lesson?.id ?? null) : null,
          skill: skill.id,
          level: level(),
          note: text(),
        },
    ),
    () => {
      const observation = pick(tables.observation);
      return observation && { type: 'observe.remove', observation: observation.id };
    },
    ...Array.from(
      { length: 4 },
      () => () =>
        past && { type: 'lesson.close' as const, lesson: past.id, minutes: chance(0.2) ? minutes() : null },
    ),
    () =>
      lesson &&
      courseUnit &&
      someActivity && {
        type: 'segment.add',
        lesson: lesson.id,
        segment: createId('segment', random),
        courseUnit: courseUnit.id,
        activity: someActivity.key,
        minutes: whole(1, 20),
      },
    () => segment && { type: 'segment.pin', seen, segment: segment.id, pinned: chance(0.7) },
    () =>
      segment && {
        type: 'segment.move',
        seen,
        segment: segment.id,
        lesson: pick(near)?.id ?? segment.lesson,
        minutes: chance(0.5) ? whole(1, 25) : null,
      },
    () =>
      course &&
      courseUnit &&
      someActivity && {
        type: 'activity.setAside',
        seen,
        course: course.id,
        courseUnit: courseUnit.id,
        activity: someActivity.key,
        backFrom: chance(0.5) ? day(1, 40) : null,
      },
    () => {
      const aside = pick(tables.setAside);
      return (
        aside && {
          type: 'activity.takeUp',
          seen,
          course: aside.course,
          courseUnit: aside.courseUnit,
          activity: aside.activity,
        }
      );
    },
    () =>
      student && {
        type: 'consent.give',
        consent: {
          id: createId('consent', random),
          student: student.id,
          givenBy: 'Ana',
          relation: 'mother',
          on: today,
          note: '',
        },
      },
    () => {
      const consent = pick(tables.consent);
      return consent && { type: 'consent.withdraw', consent: consent.id, on: today };
    },
    ...Array.from(
      { length: 3 },
      () => () =>
        student && {
          type: 'take.keep' as const,
          take: {
            ...emptyTake(createId('take', random), student.id),
            lesson: chance(0.5) ? (lesson?.id ?? null) : null,
          },
          sound: chance(0.7) ? { id: createId('sound', random), type: 'audio/webm', data: 'AAAA' } : null,
        },
    ),
    () => {
      const take = pick(tables.take);
      return take && { type: 'take.discard', take: take.id };
    },
    () => {
      const take = pick(tables.take);
      return take && chance(0.5) ? { type: 'take.eraseSounds', takes: [take.id] } : null;
    },
    () => {
      const take = pick(tables.take);
      return (
        take &&
        course &&
        skill && {
          type: 'observe',
          observation: createId('observation', random),
          course: course.id,
          student: null,
          lesson: null,
          skill: skill.id,
          level: level(),
          note: '',
          take: take.id,
        }
      );
    },
    () => {
      const change = pick(changes);
      return change === undefined
        ? null
        : {
            type: 'undo',
            change: change as `change:${string}` & Extract<Command, { type: 'undo' }>['change'],
          };
    },
  ];
  return pick(makers)?.() ?? null;
}
