// Fields that commands and requests share.

import { z } from 'zod';
import { type Id, isDate, isId, isTime, type PlainDate, type PlainTime } from '#core';
import { findInstrument, type InstrumentId } from '#music';

/** A schema for ids of one kind. */
export const idOf = <P extends string>(prefix: P) =>
  z.custom<Id<P>>((v) => typeof v === 'string' && isId(prefix, v), {
    error: `must be an id like ${prefix}:…`,
  });

export const date = z.custom<PlainDate>((v) => typeof v === 'string' && isDate(v), {
  error: 'must be a day that exists, written YYYY-MM-DD',
});
export const time = z.custom<PlainTime>((v) => typeof v === 'string' && isTime(v), {
  error: 'must be a time of day, written HH:MM',
});
export const instrument = z.custom<InstrumentId>((v) => typeof v === 'string' && findInstrument(v) !== null, {
  error: 'must be the id of an instrument we know, such as alto_sax',
});
export const short = z.string().trim().max(300, 'must be 300 characters or fewer');
/** Of chance: the same seed makes the same sheet. */
export const seed = z
  .int()
  .min(0)
  .max(2 ** 31 - 1);
/** The revision the sender had on screen. */
export const seen = z.int().min(0);
