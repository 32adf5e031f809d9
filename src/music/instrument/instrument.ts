// What a student plays: the id that everything else (range, clef, fingering, sound) hangs on.

import { instruments } from './instrument.data.ts';

export type Instrument = (typeof instruments)[number];
export type InstrumentId = Instrument['id'];
export type InstrumentFamily = Instrument['family'];

const instrumentsById = new Map<string, Instrument>(instruments.map((i) => [i.id, i]));

/** The instrument with this id, or null. `findInstrument('alto_sax')?.name` → `Alto saxophone` */
export function findInstrument(id: string): Instrument | null {
  return instrumentsById.get(id) ?? null;
}

/** All instruments, in score order within each family. */
export function listInstruments(): readonly Instrument[] {
  return instruments;
}
