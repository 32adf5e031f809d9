// sound: from an arrangement to what is heard, by a synthesiser of sampled instruments; loudness; files of sound.

export { type Band, type BandTrack, createBand, type Loop, type StereoSound } from './band.ts';
export { type BankWithoutPreset, trimToBand } from './band-bank.ts';
export { findLevel, type Level, levelledPieces, type StoredSound, target } from './level.ts';
export {
  type Biquad,
  createLoudnessMeter,
  kWeighting,
  type LoudnessMeter,
  truePeakDb,
} from './loudness.ts';
export { createTimeMap } from './time-map.ts';
export { formatWav, wavHeader, wavSamples } from './write-wav.ts';
