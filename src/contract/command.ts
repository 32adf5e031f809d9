// Every change a person can make, as one closed list of commands. Each is sent with an id minted by the sender, so that
// a command queued through a dead network or server is applied once; and structural ones say which revision they saw,
// so that two windows never overwrite each other silently.

import { z } from 'zod';
import { isFields } from '#core';
import { areas, stages, type UnitDocument } from '#planning';
import { eraseCommand } from './erasure.ts';
import { date, idOf, instrument, seed, seen, short, time } from './field.ts';
import { lessonLength } from './lesson-length.ts';
import { takeCommands } from './take.ts';

const name = z.string().trim().min(1, 'must not be empty').max(120, 'must be 120 characters or fewer');
const text = z.string().max(20_000, 'must be 20,000 characters or fewer');
const stage = z.enum(stages);
const level = z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4)]);
const weekday = z.union([
  z.literal(1),
  z.literal(2),
  z.literal(3),
  z.literal(4),
  z.literal(5),
  z.literal(6),
  z.literal(7),
]);
const lessonMinutes = z
  .int()
  .min(lessonLength.least, `must be at least ${lessonLength.least}`)
  .max(lessonLength.most, `must be at most ${lessonLength.most}`);

const contact = z.object({
  name: z.string().trim().max(120),
  relation: z.string().trim().max(60),
  phone: z.string().trim().max(60),
  email: z.string().trim().max(200),
});
const courseSettings = z.object({
  overrun: z.number().min(0.02).max(0.45),
  retention: z.number().min(0.7).max(0.97),
  maxRun: z.int().min(1).max(10),
  parkGap: z.int().min(0).max(6),
  settlingIn: z.int().min(0).max(20),
  settingPractice: z.int().min(0).max(20),
  recap: z.int().min(0).max(20),
  revisit: z.int().min(0).max(40),
  mostBlocks: z.int().min(1).max(10),
  mostStrands: z.int().min(1).max(8),
});
const strand = z.object({
  id: idOf('strand'),
  name,
  ink: z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3)]),
  priority: z.int().min(1).max(9),
  deadline: date.nullable(),
});
const student = z.object({
  id: idOf('student'),
  name,
  born: date.nullable(),
  birthYear: z.int().min(1900).max(2199).nullable(),
  instruments: z.array(z.object({ instrument, stage })).max(12),
  /** Null takes them out of a family. */
  family: idOf('family').nullable(),
  contacts: z.array(contact).max(12),
  note: text,
  since: date,
});
const slot = z.object({
  id: idOf('slot'),
  weekday,
  time,
  minutes: lessonMinutes,
  starts: date,
  ends: date.nullable(),
});
const skill = z.object({
  id: idOf('skill'),
  title: name,
  area: z.enum(areas),
  stage,
  description: text,
  restsOn: z.array(idOf('skill')).max(20),
  ongoing: z.boolean(),
});
/** Read in full by `music` when the command is carried out. */
const materialSpec = z.custom<Readonly<Record<string, unknown>>>(
  (v) => isFields(v) && JSON.stringify(v).length <= 20_000,
  { error: 'must be a spec: an object that names its kind, of 20,000 characters or fewer' },
);
/** Checked in full by `parseUnit` of planning when the command is carried out. */
const unitDocument = z.custom<UnitDocument>((v) => typeof v === 'object' && v !== null, {
  error: 'must be a unit document',
});

const course = idOf('course');
const lesson = idOf('lesson');
const segment = idOf('segment');

const steps = [
  // studio
  z.strictObject({
    type: z.literal('studio.found'),
    name,
    teacher: z.string().trim().max(120),
    timeZone: z.string().max(60),
    locale: z.string().max(35),
    /** Puts the starter units and the skill map into the library. */
    starterUnits: z.boolean(),
  }),
  z.strictObject({
    type: z.literal('studio.change'),
    seen,
    name: name.optional(),
    teacher: z.string().trim().max(120).optional(),
    noteNames: z.enum(['british', 'american']).optional(),
    paper: z.enum(['A4', 'Letter']).optional(),
    locale: z.string().max(35).optional(),
    timeZone: z.string().max(60).optional(),
    defaults: courseSettings.optional(),
  }),
  // students, families, groups
  z.strictObject({ type: z.literal('student.add'), student }),
  z.strictObject({ type: z.literal('student.addMany'), students: z.array(student).min(1).max(500) }),
  z.strictObject({ type: z.literal('student.change'), seen, student }),
  z.strictObject({ type: z.literal('student.leave'), seen, student: idOf('student'), on: date }),
  z.strictObject({ type: z.literal('student.return'), seen, student: idOf('student') }),
  z.strictObject({ type: z.literal('student.remove'), seen, student: idOf('student') }),
  /**
   * Makes students siblings, with those who are siblings of any of them: they come into one family, of this id unless there
   * is one. `contacts` is what they share; without it, what their families held and who stands in two students' contacts.
   */
  z.strictObject({
    type: z.literal('family.join'),
    family: idOf('family'),
    students: z.array(idOf('student')).min(2).max(40),
    contacts: z.array(contact).max(12).optional(),
  }),
  /** The contacts that siblings share. */
  z.strictObject({
    type: z.literal('family.change'),
    seen,
    family: idOf('family'),
    contacts: z.array(contact).max(12),
  }),
  z.strictObject({
    type: z.literal('group.put'),
    seen,
    group: z.object({ id: idOf('group'), name, members: z.array(idOf('student')).min(1).max(40) }),
  }),
  z.strictObject({ type: z.literal('group.remove'), seen, group: idOf('group') }),
  // calendar
  z.strictObject({
    type: z.literal('term.put'),
    term: z.object({ id: idOf('term'), name, starts: date, ends: date }),
  }),
  z.strictObject({ type: z.literal('term.remove'), term: idOf('term') }),
  z.strictObject({
    type: z.literal('holiday.putMany'),
    holidays: z
      .array(z.object({ id: idOf('holiday'), name, starts: date, ends: date, source: z.string().max(300) }))
      .min(1)
      .max(400),
  }),
  z.strictObject({ type: z.literal('holiday.remove'), holiday: idOf('holiday') }),
  // courses
  z.strictObject({
    type: z.literal('course.open'),
    course: z.object({
      id: course,
      student: idOf('student').nullable(),
      group: idOf('group').nullable(),
      instrument,
      stage,
      strands: z.array(strand).min(1).max(8),
      settings: courseSettings.optional(),
    }),
    slot: slot.nullable(),
  }),
  z.strictObject({
    type: z.literal('course.change'),
    seen,
    course,
    stage: stage.optional(),
    instrument: instrument.optional(),
    strands: z.array(strand).min(1).max(8).optional(),
    settings: courseSettings.optional(),
  }),
  /** Null lets a course that ended go on again. */
  z.strictObject({ type: z.literal('course.end'), seen, course, on: date.nullable() }),
  z.strictObject({ type: z.literal('slot.put'), seen, course, slot }),
  z.strictObject({ type: z.literal('slot.remove'), seen, course, slot: idOf('slot') }),
  z.strictObject({
    type: z.literal('event.put'),
    seen,
    course,
    event: z.object({ id: idOf('event'), date, title: name }),
  }),
  z.strictObject({ type: z.literal('event.remove'), seen, course, event: idOf('event') }),
  /** Plans again from today, as every other course command does by itself. */
  z.strictObject({ type: z.literal('course.replan'), seen, course }),
  /** The teacher has looked at what moved. */
  z.strictObject({ type: z.literal('course.looked'), course }),
  // units on a course
  z.strictObject({
    type: z.literal('courseUnit.give'),
    seen,
    course,
    courseUnit: idOf('course-unit'),
    unit: idOf('unit'),
    strand: idOf('strand'),
    position: z.int().min(0).max(999).optional(),
    notBefore: date.nullable().optional(),
    notAfter: date.nullable().optional(),
  }),
  z.strictObject({
    type: z.literal('courseUnit.change'),
    seen,
    courseUnit: idOf('course-unit'),
    strand: idOf('strand').optional(),
    position: z.int().min(0).max(999).optional(),
    notBefore: date.nullable().optional(),
    notAfter: date.nullable().optional(),
    document: unitDocument.optional(),
  }),
  z.strictObject({ type: z.literal('courseUnit.remove'), seen, courseUnit: idOf('course-unit') }),
  /** Saves this student's copy as the library's next version. */
  z.strictObject({ type: z.literal('courseUnit.takeIntoLibrary'), seen, courseUnit: idOf('course-unit') }),
  /** Replaces this student's copy with the library's newest version. */
  z.strictObject({ type: z.literal('courseUnit.takeFromLibrary'), seen, courseUnit: idOf('course-unit') }),
  // library
  /** `seenVersion` 0 for a new unit. */
  z.strictObject({ type: z.literal('unit.save'), seenVersion: seen, document: unitDocument }),
  z.strictObject({ type: z.literal('unit.retire'), unit: idOf('unit'), retired: z.boolean() }),
  z.strictObject({
    type: z.literal('unit.import'),
    units: z.array(unitDocument).max(200),
    skills: z.array(skill).max(2000),
  }),
  z.strictObject({ type: z.literal('skill.put'), skill }),
  z.strictObject({ type: z.literal('skill.remove'), skill: idOf('skill') }),
  // lessons
  z.strictObject({
    type: z.literal('lesson.add'),
    seen,
    course,
    lesson: z.object({ id: lesson, date, time, minutes: lessonMinutes }),
  }),
  z.strictObject({ type: z.literal('lesson.cancel'), lesson, reason: short }),
  z.strictObject({ type: z.literal('lesson.miss'), lesson, reason: short }),
  z.strictObject({ type: z.literal('lesson.restore'), lesson }),
  z.strictObject({ type: z.literal('lesson.move'), lesson, date, time, minutes: lessonMinutes }),
  z.strictObject({ type: z.literal('lesson.bar'), lesson, barred: z.boolean() }),
  /** Members of a group who were not there: all of them, so that none means that everybody was. */
  z.strictObject({ type: z.literal('lesson.absent'), lesson, absent: z.array(idOf('student')).max(40) }),
  /**
   * Text as it is typed. `base` is the text the typing began from, as the studio once told it. What others wrote since
   * stays: both changes are made, each once, and where both wrote at the same place one stands above the other.
   */
  z.strictObject({
    type: z.literal('lesson.write'),
    lesson,
    field: z.enum(['note', 'practice']),
    base: text,
    text,
  }),
  z.strictObject({ type: z.literal('segment.write'), segment, base: text, text }),
  /** What a segment took and what came of it. `seconds` is the clock; null leaves it as it was. */
  z.strictObject({
    type: z.literal('segment.log'),
    segment,
    seconds: z
      .int()
      .min(0)
      .max(6 * 3600)
      .nullable(),
    outcome: z.enum(['finished', 'partly', 'setAside', 'skipped']).nullable(),
    /** Share of this chunk that was reached, 0..1, when partly; null to reckon it from the clock. */
    share: z.number().min(0).max(1).nullable(),
  }),
  z.strictObject({
    type: z.literal('observe'),
    observation: idOf('observation'),
    course,
    student: idOf('student').nullable(),
    lesson: lesson.nullable(),
    skill: idOf('skill'),
    level,
    note: short,
    /** The take that shows it. */
    take: idOf('take').optional(),
  }),
  z.strictObject({ type: z.literal('observe.remove'), observation: idOf('observation') }),
  z.strictObject({ type: z.literal('lesson.close'), lesson, minutes: lessonMinutes.nullable() }),
  /** Adds an activity to a lesson on the spot (an extension, something taken up). */
  z.strictObject({
    type: z.literal('segment.add'),
    lesson,
    segment,
    courseUnit: idOf('course-unit'),
    activity: z.string().max(80),
    minutes: z.int().min(1).max(120),
  }),
  z.strictObject({ type: z.literal('segment.pin'), seen, segment, pinned: z.boolean() }),
  /** To another lesson, or to other minutes in the same one; the segment is pinned there. */
  z.strictObject({
    type: z.literal('segment.move'),
    seen,
    segment,
    lesson,
    minutes: z.int().min(1).max(120).nullable(),
  }),
  z.strictObject({
    type: z.literal('activity.setAside'),
    seen,
    course,
    courseUnit: idOf('course-unit'),
    activity: z.string().max(80),
    backFrom: date.nullable(),
  }),
  z.strictObject({
    type: z.literal('activity.takeUp'),
    seen,
    course,
    courseUnit: idOf('course-unit'),
    activity: z.string().max(80),
  }),
  // sheets and backings on one lesson's practice sheet
  z.strictObject({
    type: z.literal('material.keep'),
    lesson,
    material: z.strictObject({
      id: idOf('material'),
      title: name,
      spec: materialSpec,
      seed,
    }),
  }),
  z.strictObject({ type: z.literal('material.remove'), material: idOf('material') }),
] as const;

const stepsOf = (most: number) => z.array(z.discriminatedUnion('type', steps)).min(1).max(most);

export const commandSchema = z.discriminatedUnion('type', [
  ...steps,
  // takes, and consent to record them
  ...takeCommands,
  /** Takes a student out for good, with all that is theirs, from the list of changes too. It cannot be taken back. */
  eraseCommand,
  /** Several as one: all are done or none, each has seen what those before it did, and courses are planned again once. */
  z.strictObject({ type: z.literal('together'), label: short.min(1), commands: stepsOf(1000) }),
  /** Takes a change back; undoing an undo does it again. */
  z.strictObject({ type: z.literal('undo'), change: idOf('change') }),
]);

export type Command = z.infer<typeof commandSchema>;
export type CommandType = Command['type'];
/** What may be done together with others. */
export type Step = CommandOf<'together'>['commands'][number];
export type CommandOf<T extends CommandType> = Extract<Command, { type: T }>;

export const sendSchema = z.strictObject({ id: idOf('change'), command: commandSchema });
/** One command on its way, with the id that makes it count once. */
export type Send = z.infer<typeof sendSchema>;

export const whatIfSchema = z.strictObject({ commands: stepsOf(50) });
