// What the fields of a row hold beyond the kind of their column: days, times, stages, lists. A file that says otherwise
// would be kept whole and then break every screen that shows it. Numbers have the width that sums need to stay sound, not
// the narrower one that screens ask for, so that no studio that was ever exported is refused.

import { z } from 'zod';
import { isDate, isTime } from '#core';
import { findInstrument } from '#music';
import { areas, type LeftOut, type Move, type Reason, type SegmentKind, stages } from '#planning';
import type { LessonRecord, SegmentRecord, TableName, Tables } from '#studio';

const date = z.string().refine(isDate);
const time = z.string().refine(isTime);
const instrument = z.string().refine((id) => findInstrument(id) !== null);
const stage = z.enum(stages);
const area = z.enum(areas);
const count = z.int().min(0).max(1e9);
const minutes = z.number().min(0).max(1440);
const amount = z.number().min(-1e9).max(1e9);
const text = z.string();
const texts = z.array(text);
const contacts = z.array(z.looseObject({ name: text, relation: text, phone: text, email: text }));
const settings = z.looseObject({
  overrun: amount,
  retention: amount,
  maxRun: count,
  parkGap: count,
  settlingIn: minutes,
  settingPractice: minutes,
  recap: minutes,
  revisit: minutes,
  mostBlocks: count,
  mostStrands: count,
});
const strand = z.looseObject({
  id: text,
  name: text,
  ink: z.int().min(0).max(3),
  priority: count,
  deadline: date.nullable(),
});

/** A value of some kind, with what else it says; the compiler sees to it that no kind is forgotten. */
const oneOf = <K extends string>(shapes: { readonly [P in K]: z.ZodRawShape }) =>
  z.union(
    Object.entries<z.ZodRawShape>(shapes).map(([kind, shape]) =>
      z.looseObject({ kind: z.literal(kind), ...shape }),
    ),
  );
const keysOf = <K extends string>(keys: { readonly [P in K]: 0 }) => Object.keys(keys) as K[]; // its keys are K
const reason = oneOf<Reason['kind']>({
  nextInOrder: {},
  pinned: {},
  readyEarly: {},
  restsOn: { title: text },
  split: { minutes, upTo: minutes, of: minutes },
  due: { recall: amount, lastSeen: date.nullable() },
  neededNext: { by: text },
  rested: { lessons: amount },
  backFromAside: { since: date },
  knownAlready: { level: amount },
  pace: { percent: amount, observations: amount },
  variant: { title: text },
  deadline: { date },
});
const place = z.looseObject({ date, minutes }).nullable();
const move = z.looseObject({
  key: text,
  title: text,
  from: place,
  to: place,
  because: oneOf<Move['because']['kind']>({
    notReached: {},
    fasterThanPlanned: {},
    slowerThanPlanned: {},
    paceLearnt: {},
    knownAlready: {},
    due: {},
    madeRoom: {},
    byHand: {},
    lessonGone: { date },
    restsOnMoved: { title: text },
  }),
});
const plan = z.looseObject({
  fingerprint: text,
  pace: z.looseObject({ mean: amount, sd: amount, observations: amount }),
  leftOut: z.array(
    z.looseObject({
      courseUnit: text,
      activity: text,
      title: text,
      minutes: amount,
      why: oneOf<LeftOut['why']['kind']>({
        noRoom: {},
        notReady: {},
        setAside: {},
        noRoomBefore: { date },
        afterLeftOut: { title: text },
      }),
    }),
  ),
});

/** The zone by which days and times are told; every screen asks this machine for it. */
const timeZone = z.string().refine((name) => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
});

const formsByTable: { readonly [T in TableName]: { readonly [F in keyof Tables[T]]?: z.ZodType } } = {
  studio: { revision: count, timeZone, defaults: settings },
  family: { revision: count, contacts },
  student: {
    revision: count,
    born: date,
    birthYear: z.int().min(0).max(9999),
    instruments: z.array(z.looseObject({ instrument, stage })),
    contacts,
    since: date,
    left: date,
  },
  group: { revision: count, members: texts },
  skill: { area, stage, restsOn: texts },
  unit: { version: count, area },
  unitVersion: { version: count },
  term: { starts: date, ends: date },
  holiday: { starts: date, ends: date },
  course: {
    revision: count,
    instrument,
    stage,
    strands: z.array(strand),
    settings,
    moved: z.array(move),
    plan,
    ended: date,
  },
  courseUnit: { unitVersion: count, position: count, notBefore: date, notAfter: date },
  slot: { weekday: z.int().min(1).max(7), time, minutes, starts: date, ends: date },
  event: { date },
  lesson: {
    date,
    time,
    minutes: minutes.min(1),
    status: z.enum(keysOf<LessonRecord['status']>({ planned: 0, taught: 0, missed: 0, cancelled: 0 })),
    slotDate: date,
    overrun: amount,
    ongoing: texts,
    absent: texts,
  },
  segment: {
    position: count,
    kind: z.enum(
      keysOf<SegmentKind>({
        settlingIn: 0,
        recap: 0,
        revisit: 0,
        work: 0,
        extension: 0,
        open: 0,
        practice: 0,
      }),
    ),
    start: minutes,
    minutes,
    reasons: z.array(reason),
    seconds: z.number().min(0).max(86_400),
    covered: minutes,
    outcome: z.enum(
      keysOf<NonNullable<SegmentRecord['outcome']>>({ finished: 0, partly: 0, setAside: 0, skipped: 0 }),
    ),
  },
  lessonMaterial: { spec: z.record(z.string(), z.unknown()), seed: count.max(2 ** 31) },
  observation: { level: z.int().min(0).max(4), date },
  setAside: { since: date, backFrom: date },
  consent: { givenOn: date, withdrawnOn: date },
  sound: {
    type: z.string().regex(/^(audio|video)\/[\w.+-]+(\s*;\s*[\w-]+="?[\w.,-]+"?)*$/),
    bytes: count,
    unheldSince: date,
  },
  soundData: { data: z.string().regex(/^[A-Za-z0-9+/]*={0,2}$/) },
  take: {
    date,
    playedFor: z.looseObject({ courseUnit: text, activity: text }),
    instrument,
    context: z.looseObject({}),
    heard: z.looseObject({ seconds: amount, notes: z.array(z.looseObject({})), waveform: z.array(amount) }),
  },
};

const idForm = /^[a-z-]+:[a-z0-9-]{1,80}$/;

/** Whether a field can hold this value, which fits its column and is not null. */
export function fitsForm(table: TableName, field: string, value: unknown): boolean {
  if (field === 'id') return idForm.test(String(value));
  const forms: Readonly<Record<string, z.ZodType>> = formsByTable[table];
  return !Object.hasOwn(forms, field) || forms[field]?.safeParse(value).success === true;
}
