// sound: from an arrangement to what is heard, by a synthesiser of sampled instruments; loudness; files of sound.

export { type Band, type BandTrack, createBand, type StereoSound } from './band.ts';
export { type BankWithoutPreset, trimToBand } from './band-bank.ts';
export { type Levelled, levelTrack, target } from './level.ts';
export { type Biquad, integratedLoudness, kWeighting, truePeakDb, type WeightedChannel } from './loudness.ts';
export { createTimeMap } from './time-map.ts';
export { writeWav } from './write-wav.ts';
