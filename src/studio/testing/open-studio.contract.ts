// For tests: a studio in a real store in memory, with small units of our own and a few verbs to work it.

import type { Command, CommandOf, CommandReply, Fault } from '#contract';
import {
  createFixedClock,
  createSeededRandom,
  type Id,
  type PlainDate,
  type PlainTime,
  type Result,
} from '#core';
import type { Activity, Skill, UnitDocument } from '#planning';
import { createMemoryStore } from '#storage';
import type { CourseId, LessonRecord, SegmentRecord, Store } from '#studio';
import { carryOut } from '../command/carry-out.ts';
import type { Outside } from '../command/desk.ts';
import { coursePlanner } from '../course/course-planner.ts';
import type { Planner } from '../course/planner.ts';

export const day = (text: string) => text as PlainDate;
export const time = (text: string) => text as PlainTime;
export const id = <P extends string>(prefix: P, tail: string) => `${prefix}:${tail}` as Id<P>;

export const skills: readonly Skill[] = [
  skill('steady-beat', []),
  skill('call-and-answer', ['steady-beat']),
  skill('two-bar-answers', ['call-and-answer']),
  { ...skill('relaxed-hands', []), ongoing: true },
];

function skill(name: string, restsOn: readonly string[]): Skill {
  return {
    id: id('skill', name),
    title: name.replaceAll('-', ' '),
    area: 'rhythm',
    stage: 'beginner',
    description: `${name} is there`,
    restsOn: restsOn.map((s) => id('skill', s)),
    ongoing: false,
  };
}

export function activity(
  key: string,
  develops: string,
  usual: number,
  more: Partial<Activity> = {},
): Activity {
  return {
    key,
    title: key.replaceAll('-', ' '),
    howTo: `Play and say ${key}.`,
    minutes: { shortest: Math.min(5, usual), usual, longest: usual * 2 },
    develops: [id('skill', develops)],
    character: 'new',
    variants: [],
    materials: [],
    bring: [],
    ...more,
  };
}

export const unit: UnitDocument = {
  format: 'levare-unit/1',
  id: id('unit', 'answers'),
  version: 1,
  title: 'Answers in two bars',
  area: 'rhythm',
  goal: 'answer a two-bar call',
  about: '',
  stages: ['beginner', 'elementary'],
  ages: { from: 6, to: 99 },
  families: [],
  skills: [
    id('skill', 'steady-beat'),
    id('skill', 'call-and-answer'),
    id('skill', 'two-bar-answers'),
    id('skill', 'relaxed-hands'),
  ],
  activities: [
    activity('walk-the-beat', 'steady-beat', 12, { bring: ['two hand drums'] }),
    activity('clap-answers', 'call-and-answer', 20),
    activity('play-answers', 'two-bar-answers', 24, { character: 'musical' }),
  ],
  extensions: [activity('lead-the-call', 'two-bar-answers', 10)],
  checks: [
    {
      key: 'beat',
      skill: id('skill', 'steady-beat'),
      level: 2,
      lookFor: 'feet and hands agree',
      listenFor: [{ kind: 'evenTiming', withinMs: 60 }],
    },
    { key: 'answers', skill: id('skill', 'two-bar-answers'), level: 3, lookFor: 'the answer ends in time' },
  ],
  next: [],
};

export const otherUnit: UnitDocument = {
  ...unit,
  id: id('unit', 'long-notes'),
  title: 'Long notes',
  area: 'technique',
  skills: [id('skill', 'steady-beat')],
  activities: [activity('breathe', 'steady-beat', 10), activity('long-notes', 'steady-beat', 15)],
  extensions: [],
  checks: [{ key: 'beat', skill: id('skill', 'steady-beat'), level: 2, lookFor: 'even' }],
};

/** A take in which nothing was heard, as it is sent. */
export function emptyTake(take: Id<'take'>, student: Id<'student'>): CommandOf<'take.keep'>['take'] {
  const silent = { heard: false, reason: 'No notes were heard.' } as const;
  return {
    id: take,
    student,
    lesson: null,
    practiceOf: null,
    title: 'Long notes',
    activity: null,
    instrument: 'piano',
    context: {
      tempo: 90,
      metre: [4, 4],
      swing: null,
      countInBeats: 0,
      offsetS: null,
      scale: null,
      chart: null,
      instrument: 'piano',
    },
    heard: { seconds: 4, notes: [], alignment: null, problems: [], waveform: [0, 0.5, 0] },
    evidence: {
      phrases: silent,
      noteValues: silent,
      syncopation: silent,
      notesChosen: silent,
      timing: silent,
      intonation: silent,
      tone: silent,
      dynamics: silent,
      motifs: silent,
    },
    note: '',
  };
}

export interface TestStudio {
  readonly store: Store;
  readonly outside: () => Outside;
  setToday(date: string, at?: string): void;
  send(command: Command, change?: string): Promise<Result<CommandReply, Fault>>;
  /** As `send`, and fails the test when it is refused. */
  done(command: Command): Promise<CommandReply>;
  /** The fault of a command that must be refused. */
  refused(command: Command): Promise<Fault>;
  revision(course: CourseId): Promise<number>;
  lessons(course: CourseId): Promise<readonly LessonRecord[]>;
  segments(lesson: LessonRecord['id']): Promise<readonly SegmentRecord[]>;
}

/** An empty store with verbs; Monday 7 September 2026. In memory, unless another is given. */
export async function openStore(
  today = '2026-09-07',
  planner: Planner = coursePlanner,
  given: Store | null = null,
): Promise<TestStudio> {
  const store = given ?? (await createMemoryStore(createFixedClock(day(today), time('08:00'))));
  const random = createSeededRandom(1);
  let clock = createFixedClock(day(today), time('08:00'));
  let count = 0;
  const outside = (): Outside => ({ clock, random, planner, starter: { skills, units: [unit, otherUnit] } });
  // A store that is given may hold changes of an earlier one.
  const prefix = given === null ? 'n' : 'g';
  const send = (command: Command, change = `${prefix}${count++}`) =>
    carryOut(store, { id: id('change', change), command }, outside());
  return {
    store,
    outside,
    setToday(date, at = '08:00') {
      clock = createFixedClock(day(date), time(at));
    },
    send,
    async done(command) {
      const reply = await send(command);
      if (!reply.ok) throw new Error(`${command.type} was refused: ${JSON.stringify(reply.error)}`);
      return reply.value;
    },
    async refused(command) {
      const reply = await send(command);
      if (reply.ok) throw new Error(`${command.type} was done: ${reply.value.label}`);
      return reply.error;
    },
    revision: (course) => store.read(async (r) => (await r.get('course', course))?.revision ?? -1),
    lessons: (course) =>
      store.read((r) => r.list('lesson', { where: { course }, orderBy: ['date', 'time'] })),
    segments: (lesson) => store.read((r) => r.list('segment', { where: { lesson }, orderBy: ['position'] })),
  };
}

export const ana = id('student', 'ana');
export const ben = id('student', 'ben');
export const anaCourse = id('course', 'ana');
export const benCourse = id('course', 'ben');
export const strandMain = id('strand', 'main');

export const newStudent = (student: Id<'student'>, name: string, birthYear: number) => ({
  id: student,
  name,
  born: null,
  birthYear,
  instruments: [{ instrument: 'recorder_descant' as const, stage: 'beginner' as const }],
  family: null,
  contacts: [],
  note: '',
  since: day('2026-09-01'),
});

export const newCourse = (course: CourseId, student: Id<'student'>) => ({
  id: course,
  student,
  group: null,
  instrument: 'recorder_descant' as const,
  stage: 'beginner' as const,
  strands: [{ id: strandMain, name: 'Rhythm', ink: 0 as const, priority: 1, deadline: null }],
});

export const slotOf = (name: string, at = '16:00', weekday: 1 | 2 | 3 | 4 | 5 = 1) => ({
  id: id('slot', name),
  weekday,
  time: time(at),
  minutes: 30,
  starts: day('2026-09-01'),
  ends: null,
});

/** A founded studio with a term to 18 December, half-term in October, and Ana (9) with a course on Mondays at 16:00. */
export async function openStudio(planner?: Planner, given: Store | null = null): Promise<TestStudio> {
  const studio = await openStore('2026-09-07', planner, given);
  await studio.done({
    type: 'studio.found',
    name: 'Harbour Street',
    teacher: 'Mira Solberg',
    timeZone: 'Europe/Lisbon',
    locale: 'en-GB',
    starterUnits: true,
  });
  await studio.done({
    type: 'term.put',
    term: { id: id('term', 'autumn'), name: 'Autumn', starts: day('2026-09-07'), ends: day('2026-12-18') },
  });
  await studio.done({
    type: 'holiday.putMany',
    holidays: [
      {
        id: id('holiday', 'half-term'),
        name: 'Half-term',
        starts: day('2026-10-24'),
        ends: day('2026-11-01'),
        source: '',
      },
    ],
  });
  await studio.done({ type: 'student.add', student: newStudent(ana, 'Ana', 2017) });
  await studio.done({ type: 'course.open', course: newCourse(anaCourse, ana), slot: slotOf('ana') });
  return studio;
}

/** As `openStudio`, with the unit given to Ana. */
export async function openCourseStudio(planner?: Planner): Promise<TestStudio> {
  const studio = await openStudio(planner);
  await studio.done({
    type: 'courseUnit.give',
    seen: await studio.revision(anaCourse),
    course: anaCourse,
    courseUnit: id('course-unit', 'ana-answers'),
    unit: unit.id,
    strand: strandMain,
  });
  return studio;
}
