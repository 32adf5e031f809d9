// A figure as it is read: its value, its unit, and the doubt of the measurement behind a ±.

import type { Figure, FigureUnit } from '#listening';
import { words } from '../words/index.ts';

/** Digits behind the point that the doubt lets stand. */
function digitsFor(uncertainty: number, unit: FigureUnit): number {
  if (unit === 'count') return 0;
  if (uncertainty >= 2 || uncertainty === 0)
    return unit === 'ratio' || unit === 'bits' || unit === 'strength' ? 1 : 0;
  return uncertainty >= 0.2 ? 1 : 2;
}

/** `{ value: 0.613, uncertainty: 0.04, unit: 'share' }` → `61 ± 4 %` */
export function formatFigure({ value, uncertainty, unit }: Figure, locale: string, signed = false): string {
  const scale = unit === 'share' ? 100 : 1;
  const digits = digitsFor(uncertainty * scale, unit);
  const form = (number: number, sign: boolean) =>
    new Intl.NumberFormat(locale, {
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
      signDisplay: sign ? 'exceptZero' : 'negative',
    }).format(number * scale);
  const isCertain = uncertainty * scale < 0.5 * 10 ** -digits;
  const doubt = isCertain ? '' : ` ± ${form(uncertainty, false)}`;
  const name = words.takes.units[unit];
  return `${form(value, signed)}${doubt}${name === '' ? '' : `\u00a0${name}`}`;
}

/** `75` → `1:15` */
export function formatLength(seconds: number): string {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** `300` → `under 0.1` */
export function formatMegabytes(bytes: number): string {
  const megabytes = bytes / 1024 / 1024;
  return megabytes < 0.1 ? words.takes.result.under('0.1') : megabytes.toFixed(1);
}

const names = ['C', 'C♯', 'D', 'E♭', 'E', 'F', 'F♯', 'G', 'A♭', 'A', 'B♭', 'B'];

/** Sounding pitch of a MIDI number, in the usual spelling of a chromatic scale: 60 → C4 */
export const midiName = (midi: number): string => `${names[midi % 12] ?? ''}${Math.floor(midi / 12) - 1}`;
