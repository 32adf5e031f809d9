import { describe, expect, it, test } from 'vitest';
import type { LessonView } from '#contract';
import type { Id } from '#core';
import type { OutboxCommand } from '../../app/outbox-queue.ts';
import { addOnItsWay, dropTold, markArrived, type OnItsWay, overlayLesson } from './lesson-overlay.ts';
import { segmentOf } from './lesson-segment.fixture.ts';
import { membersAsked } from './members-asked.ts';

const lesson: LessonView = {
  id: 'lesson:l' as LessonView['id'],
  course: 'course:c' as LessonView['course'],
  courseRevision: 1,
  learner: {
    student: null,
    group: null,
    name: 'Ines',
    age: 9,
    instrument: 'flute' as LessonView['learner']['instrument'],
    instrumentName: 'Flute',
    stage: 'beginner',
    members: [],
  },
  number: 1,
  date: '2026-11-25' as LessonView['date'],
  time: '15:00' as LessonView['time'],
  minutes: 30,
  status: 'planned',
  reason: '',
  overrun: 0.1,
  note: '',
  practice: '',
  toKnow: [],
  absent: [],
  strands: [],
  segments: ['a', 'b'].map((id) =>
    segmentOf(id, {
      skills: [
        {
          skill: 'skill:s' as LessonView['ongoing'][number]['skill'],
          title: 's',
          level: 1,
          here: null,
          wanted: 2,
          lookFor: [],
          listenable: [],
        },
      ],
    }),
  ),
  ongoing: [],
  previous: null,
  next: null,
  onHand: [],
  kept: [],
  suggestedPractice: '',
};
const a = 'segment:a' as LessonView['segments'][number]['id'];
const log = (seconds: number | null, outcome: 'finished' | 'partly' | null): OutboxCommand => ({
  type: 'segment.log',
  segment: a,
  seconds,
  outcome,
  share: null,
});
const write = (text: string): OutboxCommand => ({
  type: 'lesson.write',
  lesson: lesson.id,
  field: 'note',
  base: '',
  text,
});
const observe = (level: 2 | 3): OutboxCommand => ({
  type: 'observe',
  observation: 'observation:o' as Extract<OutboxCommand, { type: 'observe' }>['observation'],
  course: lesson.course,
  student: null,
  lesson: lesson.id,
  skill: 'skill:s' as LessonView['ongoing'][number]['skill'],
  level,
  note: '',
});
const listOf = (...commands: OutboxCommand[]) => commands.reduce<readonly OnItsWay[]>(addOnItsWay, []);

describe('what is on its way', () => {
  it('shows at once: texts, times, outcomes, levels and the closing', () => {
    const close: OutboxCommand = { type: 'lesson.close', lesson: lesson.id, minutes: null };
    const shown = overlayLesson(lesson, listOf(write('slower'), log(90, 'partly'), observe(3), close));
    expect(shown.note).toBe('slower');
    expect(shown.segments[0]).toMatchObject({ seconds: 90, outcome: 'partly' });
    expect(shown.segments[1]).toMatchObject({ seconds: null, outcome: null });
    for (const s of shown.segments) expect(s.skills[0]).toMatchObject({ level: 3, here: { level: 3 } });
    expect(shown.status).toBe('taught');
  });
  it('keeps one entry a place, the newest', () => {
    const list = listOf(write('a'), write('ab'), observe(2), observe(3));
    expect(list.map((e) => e.command)).toEqual([write('ab'), observe(3)]);
  });
  it('does not let a clock take back an outcome', () => {
    const shown = overlayLesson(lesson, listOf(log(60, 'finished'), log(75, null)));
    expect(shown.segments[0]).toMatchObject({ seconds: 75, outcome: 'finished' });
  });
  it('leaves another lesson alone', () => {
    const other: OutboxCommand = { ...observe(3), lesson: 'lesson:x' as LessonView['id'] } as OutboxCommand;
    expect(overlayLesson(lesson, listOf(other))).toEqual(lesson);
  });
  it('stays until a view told after its arrival has taken it in', () => {
    const sent = listOf(write('a'));
    expect(dropTold(sent, 500)).toBe(sent);
    const arrived = markArrived(sent, 1000);
    expect(dropTold(arrived, 999)).toHaveLength(1);
    expect(dropTold(arrived, 1001)).toHaveLength(0);
  });
});

test('who of a group was not there shows at once, the newest word of it', () => {
  const members = ['mia', 'ben', 'ida'].map((name) => ({
    student: `student:${name}` as Id<'student'>,
    name,
  }));
  const [mia, ben] = members;
  const group: LessonView = {
    ...lesson,
    learner: { ...lesson.learner, group: 'group:g' as Id<'group'>, members },
  };
  const away = (...absent: (typeof mia)[]): OutboxCommand => ({
    type: 'lesson.absent',
    lesson: lesson.id,
    absent: absent.flatMap((one) => (one ? [one.student] : [])),
  });
  const list = listOf(away(mia), away(mia, ben));
  expect(list).toHaveLength(1);
  expect(overlayLesson(group, list).absent).toEqual([mia, ben]);
  expect(overlayLesson(group, listOf(away(mia), away())).absent).toEqual([]);
  expect(membersAsked(lesson)).toEqual([]);
  // Who left the group since stays to be asked of.
  const later = {
    ...group,
    learner: { ...group.learner, members: members.slice(1) },
    absent: mia ? [mia] : [],
  };
  expect(membersAsked(later).map(({ name }) => name)).toEqual(['ben', 'ida', 'mia']);
});
