// Takes are kept, discarded and made silent; consent to record is given and withdrawn.

import { mostSoundBytes } from '#contract';
import { err, ok } from '#core';
import { parseTakeContext } from '#listening';
import { formatDay } from '#planning';
import { formatCount } from '../sentence/amounts.ts';
import { findConsent, minorityOf } from '../take/consent.ts';
import type { Handler } from './desk.ts';
import { invalid, notAllowed, notFound, type Refusal } from './fault.ts';
import { bytesOfBase64, eraseSound, findRoom, putSound, removeTake } from './take-sounds.ts';

export const giveConsent: Handler<'consent.give'> = async (desk, { consent }) => {
  const student = await desk.tx.get('student', consent.student);
  if (student === null) return notFound('student');
  if (consent.on > desk.today)
    return invalid('consent.on', 'The day on which consent was given lies in the future.');
  if ((await desk.tx.get('consent', consent.id)) !== null)
    return invalid('consent.id', 'This consent is on record already.');
  const { on: givenOn, ...given } = consent;
  await desk.tx.put('consent', { ...given, givenOn, withdrawnOn: null });
  return ok(`Consent to record ${student.name}, given by ${consent.givenBy} on ${formatDay(givenOn)}`);
};

export const withdrawConsent: Handler<'consent.withdraw'> = async (desk, { consent: id, on }) => {
  const consent = await desk.tx.get('consent', id);
  if (consent === null) return notFound('consent');
  if (consent.withdrawnOn !== null)
    return notAllowed(`This consent was withdrawn on ${formatDay(consent.withdrawnOn)} already.`);
  if (on > desk.today) return invalid('on', 'The day on which consent was withdrawn lies in the future.');
  await desk.tx.put('consent', { ...consent, withdrawnOn: on });
  const student = await desk.tx.get('student', consent.student);
  return ok(`Consent to record ${student?.name ?? 'a student'} withdrawn on ${formatDay(on)}`);
};

/** What a take belongs to is gone. Not `notFound`: loading the page again, as that one says, would lose what was just played. */
const notHere = (what: string): Refusal =>
  err({
    kind: 'NotFound',
    message: `${what} is not in the studio: removed or erased since then, or newer than a backup that was put back.`,
  });

const why = {
  under: 'is under 18',
  perhaps: 'may be under 18 (only the year of birth is known)',
  unknown: 'counts as under 18, since no age is known',
} as const;

export const keepTake: Handler<'take.keep'> = async (desk, { take, sound }) => {
  const { tx } = desk;
  const student = await tx.get('student', take.student);
  if (student === null) return notHere('The student of this take');
  const minority = minorityOf(student, desk.today);
  if (minority !== null && (await findConsent(tx, student.id)) === null)
    return notAllowed(
      `Nothing of ${student.name} can be kept before consent is on record: ${student.name} ${why[minority]}. Note who gave it and when.`,
    );
  const lesson = take.lesson === null ? null : await tx.get('lesson', take.lesson);
  if (take.lesson !== null && lesson === null) return notHere('The lesson of this take');
  if (take.practiceOf !== null && (await tx.get('lesson', take.practiceOf)) === null)
    return notHere('The lesson that set this practice');
  if ((await tx.get('take', take.id)) !== null) return invalid('take.id', 'This take is kept already.');
  const context = parseTakeContext(take.context);
  if (!context.ok) return invalid(`take.context.${context.error.field}`, context.error.message);
  if (sound !== null) {
    const bytes = bytesOfBase64(sound.data);
    const megabytes = (count: number) => `${(Math.max(0, count) / 1024 / 1024).toFixed(1)} MB`;
    if (bytes > mostSoundBytes)
      return invalid(
        'sound.data',
        `The sound is ${megabytes(bytes)}; at most ${megabytes(mostSoundBytes)} are kept with a take. Keep the figures only.`,
      );
    const room = await findRoom(tx);
    if (bytes > room)
      return notAllowed(
        `There is room for ${megabytes(room)} of sound, and this one is ${megabytes(bytes)}. Delete the sounds of old takes, or keep the figures only.`,
      );
    if ((await tx.get('sound', sound.id)) !== null) return invalid('sound.id', 'This sound is kept already.');
    await putSound(desk, sound.id, sound.type, sound.data);
  }
  await tx.put('take', {
    id: take.id,
    student: student.id,
    date: lesson?.date ?? desk.today,
    keptAt: desk.outside.clock.instant(),
    title: take.title,
    takenIn: lesson?.id ?? null,
    practiceOf: take.practiceOf,
    playedFor: take.activity,
    instrument: take.instrument,
    context: take.context,
    heard: take.heard,
    evidence: take.evidence,
    note: take.note,
    sound: sound?.id ?? null,
  });
  const kept = sound === null ? 'the figures of a take' : 'a take';
  return ok(`Kept ${kept} of ${student.name}: “${take.title}”`);
};

export const discardTake: Handler<'take.discard'> = async (desk, { take: id }) => {
  const take = await desk.tx.get('take', id);
  if (take === null) return notFound('take');
  await removeTake(desk, take);
  return ok(`Discarded the take “${take.title}” of ${formatDay(take.date)}`);
};

export const eraseSounds: Handler<'take.eraseSounds'> = async (desk, { takes }) => {
  let erased = 0;
  for (const id of takes) {
    const take = await desk.tx.get('take', id);
    if (take === null || take.sound === null) continue;
    await desk.tx.put('take', { ...take, sound: null });
    await eraseSound(desk, take.sound);
    erased++;
  }
  return ok(`Deleted ${formatCount(erased, 'sound')} for good`);
};
