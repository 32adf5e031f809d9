// Takes and consent as they are sent: what was heard is checked for shape and size here, its context by `listening`.

import { z } from 'zod';
import { isFields } from '#core';
import { type Alignment, type Evidence, evidenceNames, type HeardNote, type Problem } from '#listening';
import { date, idOf, instrument, short } from './field.ts';

/** Largest sound kept with a take, in bytes: about five minutes of speech-quality to half an hour of the recorder's own. */
export const mostSoundBytes = 8 * 1024 * 1024;
/** Largest sum of all sounds of a studio, in bytes, so that its export stays one file that can be read in again. */
export const mostStudioSoundBytes = 150 * 1024 * 1024;
/** Longest take that is listened to, in seconds, in the page and on the command line. */
export const longestTake = 15 * 60;
/** Points of the waveform kept for drawing. */
export const waveformPoints = 600;

/** What was known of a take beforehand, as `parseTakeContext` reads it. */
export interface WrittenContext {
  readonly tempo: number | null;
  readonly metre: readonly [number, number];
  readonly swing: number | null;
  readonly countInBeats: number;
  readonly offsetS: number | null;
  readonly scale: { readonly tonic: string; readonly name: string } | null;
  readonly chart: string | null;
  readonly instrument: string | null;
}

/** What was heard in a take. */
export interface HeardTake {
  readonly seconds: number;
  readonly notes: readonly HeardNote[];
  readonly alignment: Alignment | null;
  readonly problems: readonly Problem[];
  /** Loudest sample of each stretch, 0 to 1: at most `waveformPoints` of them. */
  readonly waveform: readonly number[];
}

const finite = z.number();
const seconds = finite.min(0).max(longestTake + 60);
const mostNotes = 20_000;
const note = z.strictObject({
  onset: seconds,
  offset: seconds,
  midi: z.int().min(0).max(127),
  cents: finite.min(-100).max(100),
  db: finite.min(-200).max(20),
  confidence: finite.min(0).max(1),
});
const fraction = z.object({ n: z.int(), d: z.int().min(1) });
const alignment = z.strictObject({
  grid: z.strictObject({
    offset: finite,
    tempo: finite.positive(),
    swing: finite,
    drift: finite,
    isGiven: z.boolean(),
    anchors: z
      .array(z.strictObject({ beat: finite, seconds: finite }))
      .min(2)
      .max(5000),
  }),
  rhythm: z
    .array(
      z.strictObject({
        note: z.int().min(0),
        tick: finite,
        ticks: finite,
        at: fraction,
        length: fraction,
        late: finite,
        isDoubtful: z.boolean(),
      }),
    )
    .max(mostNotes),
  fit: finite,
});
const heard = z.custom<HeardTake>(
  (value) =>
    z
      .strictObject({
        seconds,
        notes: z.array(note).max(mostNotes),
        alignment: alignment.nullable(),
        problems: z.array(z.looseObject({ kind: z.string().max(40) })).max(20),
        waveform: z.array(finite.min(0).max(1)).max(waveformPoints),
      })
      .safeParse(value).success,
  { error: 'must be what was heard in a take: seconds, notes, alignment, problems, waveform' },
);

const passage = z.strictObject({
  from: finite,
  to: finite,
  bar: finite.nullable(),
  shows: z.string().max(200),
});
const row = z.union([
  z.strictObject({ heard: z.literal(false), reason: z.string().max(500) }),
  z.strictObject({
    heard: z.literal(true),
    figures: z.record(
      z.string().max(40),
      z.strictObject({ value: finite, uncertainty: finite, unit: z.string().max(20) }),
    ),
    details: z.record(z.string().max(40), z.unknown()),
    passages: z.array(passage).max(2000),
  }),
]);
const evidence = z.custom<Evidence>(
  (value) => {
    const rows = z.strictObject(Object.fromEntries(evidenceNames.map((name) => [name, row])));
    return rows.safeParse(value).success && JSON.stringify(value).length < 2_000_000;
  },
  { error: `must hold a row of evidence for each of ${evidenceNames.join(', ')}` },
);
const context = z.custom<WrittenContext>(
  (value) => isFields(value) && JSON.stringify(value).length < 20_000,
  { error: 'must be the context of a take' },
);

const base64 = /^[A-Za-z0-9+/]*={0,2}$/;
const sound = z.strictObject({
  id: idOf('sound'),
  /** `audio/webm;codecs=opus` */
  type: z
    .string()
    .regex(/^(audio|video)\/[\w.+-]+(\s*;\s*[\w-]+="?[\w.,-]+"?)*$/, 'must be a media type of sound'),
  /** The bytes in base64. */
  data: z
    .string()
    .min(4, 'must not be empty')
    .max(Math.ceil(mostSoundBytes / 3) * 4, 'is larger than 8 MB: keep the figures only, or a shorter take')
    .regex(base64, 'must be base64'),
});

/** The commands on takes and on consent to record. */
export const takeCommands = [
  /** Consent to record and keep takes of a student. */
  z.strictObject({
    type: z.literal('consent.give'),
    consent: z.strictObject({
      id: idOf('consent'),
      student: idOf('student'),
      /** Who gave it, and who they are to the student. */
      givenBy: z.string().trim().min(1, 'must not be empty').max(120),
      relation: z.string().trim().max(60),
      on: date,
      note: short,
    }),
  }),
  z.strictObject({ type: z.literal('consent.withdraw'), consent: idOf('consent'), on: date }),
  /** Keeps a take: what was heard, and the sound unless it is null. */
  z.strictObject({
    type: z.literal('take.keep'),
    take: z.strictObject({
      id: idOf('take'),
      student: idOf('student'),
      /** The lesson in which it was recorded. */
      lesson: idOf('lesson').nullable(),
      /** The lesson that set the practice in which it was recorded. */
      practiceOf: idOf('lesson').nullable().default(null),
      /** What was played. */
      title: z.string().trim().min(1, 'must not be empty').max(200),
      activity: z.strictObject({ courseUnit: idOf('course-unit'), activity: z.string().max(80) }).nullable(),
      instrument: instrument.nullable(),
      context,
      heard,
      evidence,
      note: short,
    }),
    sound: sound.nullable(),
  }),
  z.strictObject({ type: z.literal('take.discard'), take: idOf('take') }),
  /** Deletes sounds for good; what was heard in the takes stays. It cannot be taken back. */
  z.strictObject({ type: z.literal('take.eraseSounds'), takes: z.array(idOf('take')).min(1).max(2000) }),
] as const;
