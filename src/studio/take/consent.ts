// Whether a student may be recorded: who is or may be under age, and which consent stands.

import type { TakesView } from '#contract';
import { ageOn, type PlainDate } from '#core';
import type { ConsentRecord, StudentId, StudentRecord } from '../record/records.ts';
import type { Reader } from '../record/store.ts';

/**
 * The age below which consent is asked for. Most countries' age of majority is 18 (the UN Convention on the Rights of the
 * Child, article 1, takes it as the usual one); local law may ask for more.
 */
const ageOfMajority = 18;

/**
 * Under 18, perhaps under, or not known; null for an adult. A year of birth alone says that somebody is of age only once the
 * nineteenth year has begun.
 */
export function minorityOf(
  { born, birthYear }: Pick<StudentRecord, 'born' | 'birthYear'>,
  today: PlainDate,
): TakesView['minority'] {
  if (born !== null) return ageOn(born, today) < ageOfMajority ? 'under' : null;
  if (birthYear === null) return 'unknown';
  const years = Number(today.slice(0, 4)) - birthYear;
  if (years < ageOfMajority) return 'under';
  return years === ageOfMajority ? 'perhaps' : null;
}

/** The newest consent that stands, or null. */
export async function findConsent(reader: Reader, student: StudentId): Promise<ConsentRecord | null> {
  const all = await listConsents(reader, student);
  return all.findLast((consent) => consent.withdrawnOn === null) ?? null;
}

/** Every consent of a student, oldest first. */
export const listConsents = (reader: Reader, student: StudentId): Promise<readonly ConsentRecord[]> =>
  reader.list('consent', { where: { student }, orderBy: ['givenOn'] });
