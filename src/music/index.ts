// music: instruments now; pitch, scale, chord, rhythm and notation join here.

export {
  findInstrument,
  type Instrument,
  type InstrumentFamily,
  type InstrumentId,
  listInstruments,
} from './instrument/instrument.ts';
