// An instrument by its id, or a sentence that names the nearest one.

import { err, ok, type Result } from '#core';
import { findInstrument, type Instrument, listInstruments, nearestWord } from '#music';

/** `option` is the word on the command line that named it: `--for`. */
export function readInstrument(id: string | undefined, option: string): Result<Instrument, string> {
  const ids = listInstruments().map((instrument) => instrument.id);
  if (id === undefined) return err(`${option} is missing; name an instrument: ${ids.join(', ')}.`);
  const found = findInstrument(id);
  if (found !== null) return ok(found);
  return err(
    `${option} is "${id}", which is no instrument Levare knows. The nearest is "${nearestWord(id, ids)}".`,
  );
}
