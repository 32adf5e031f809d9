// Words on a sheet.

import type { Instrument } from '../../instrument/instrument.ts';
import type { PitchName } from '../../pitch/pitch.ts';

const signs = ['♭♭', '♭', '', '♯', '𝄪'];

/** A note name as it is printed. `B♭` */
export function printName(name: PitchName): string {
  return name.letter + (signs[name.alter + 2] ?? '');
}

/** With a capital. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** At the foot of every sheet: for whom it was made. */
export function footerFor(instrument: Instrument, stage: string): string {
  return `${instrument.name} · ${stage}`;
}
