// An instrument by its id, or a sentence that names the nearest one.

import { err, nearestWord, ok, type Result } from '#core';
import { findInstrument, type Instrument, listInstruments } from '#music';

/** `option` is the word on the command line that named it: `--for`. */
export function readInstrument(id: string | undefined, option: string): Result<Instrument, string> {
  const ids = listInstruments().map((instrument) => instrument.id);
  if (id === undefined) return err(`${option} is missing; name an instrument: ${ids.join(', ')}.`);
  const found = findInstrument(id);
  if (found !== null) return ok(found);
  const holding = ids.filter((known) => id !== '' && known.includes(id.toLowerCase()));
  const near = holding.length > 0 ? holding : [nearestWord(id, ids)];
  return err(
    `${option} is "${id}", which is no instrument Levare knows. The nearest is "${near.join('" or "')}".`,
  );
}
