import { z } from 'zod';
import { type Id, isId } from '#core';

/** A schema for ids of one kind. */
export const idOf = <P extends string>(prefix: P) =>
  z.custom<Id<P>>((v) => typeof v === 'string' && isId(prefix, v), {
    error: `must be an id like ${prefix}:…`,
  });
