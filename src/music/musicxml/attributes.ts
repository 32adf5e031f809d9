// `<attributes>`: divisions, key, metre, staves, clefs and transposition, each only where it changes.

import { openStrings } from '../instrument/instrument.ts';
import { keyFifths } from '../key/key.ts';
import { formatMetre } from '../rhythm/metre.ts';
import type { ClefChange, Part, PartBar, ScoreBar, ScoreClef, Staff } from '../score/score.ts';
import { element, textElement } from './element.ts';

/** Sign, line and octave of each clef. */
const signs: Readonly<Record<ScoreClef, readonly [sign: string, line: number | null, octave: number]>> = {
  treble: ['G', 2, 0],
  treble_8: ['G', 2, -1],
  bass: ['F', 4, 0],
  alto: ['C', 3, 0],
  tenor: ['C', 4, 0],
  percussion: ['percussion', null, 0],
  tab: ['TAB', 5, 0],
};

function writeClef(clef: ScoreClef, number: number | null): string {
  const [sign, line, octave] = signs[clef];
  return element(
    'clef',
    { number },
    textElement('sign', sign),
    line === null ? '' : textElement('line', line),
    octave === 0 ? '' : textElement('clef-octave-change', octave),
  );
}

function writeTime({ metre, isFree }: ScoreBar): string {
  const beats = textElement('beats', metre.beats);
  const looks = { symbol: metre.symbol, 'print-object': isFree ? 'no' : null };
  return element('time', looks, beats, textElement('beat-type', metre.unit));
}

/** The instrument's transposition; nothing where written and sounding are one. */
function writeTranspose(part: Part): string {
  const [diatonic, chromatic, octaves] = part.instrument.transpose;
  if (diatonic === 0 && chromatic === 0 && octaves === 0) return '';
  return element(
    'transpose',
    {},
    textElement('diatonic', diatonic),
    textElement('chromatic', chromatic),
    octaves === 0 ? '' : textElement('octave-change', octaves),
  );
}

function writeStaffDetails(part: Part, staff: Staff, number: number | null): string {
  if (staff === 'five-line') return '';
  if (staff === 'one-line') return element('staff-details', { number }, textElement('staff-lines', 1));
  const strings = openStrings(part.instrument);
  const tunings = strings.map((pitch, i) =>
    element(
      'staff-tuning',
      { line: i + 1 },
      textElement('tuning-step', pitch.letter),
      pitch.alter === 0 ? '' : textElement('tuning-alter', pitch.alter),
      textElement('tuning-octave', pitch.octave),
    ),
  );
  return element('staff-details', { number }, textElement('staff-lines', strings.length), ...tunings);
}

/** A clef inside a bar. */
export function writeClefChange(change: ClefChange, isOneStaff: boolean): string {
  return element('attributes', {}, writeClef(change.clef, isOneStaff ? null : change.staff));
}

/** The clef of a staff at a bar's end. */
function lastClef(bar: PartBar, staff: number): ScoreClef | undefined {
  return bar.clefChanges.findLast((change) => change.staff === staff)?.clef ?? bar.clefs[staff - 1];
}

/** What the writer knows of the bar before, to say only what changes. */
export interface Situation {
  readonly frame: ScoreBar;
  readonly bar: PartBar;
}

/** The bar's attributes; empty where nothing changes. `before` is null for the first bar. */
export function writeAttributes(
  part: Part,
  divisions: number,
  now: Situation,
  before: Situation | null,
): string {
  const isOne = part.staves.length === 1;
  const hasPitch = part.staves.some((staff) => staff !== 'one-line');
  const keyChanges =
    before === null ||
    keyFifths(before.bar.key) !== keyFifths(now.bar.key) ||
    before.bar.key.mode !== now.bar.key.mode;
  const timeChanges =
    before === null ||
    before.frame.isFree !== now.frame.isFree ||
    formatMetre(before.frame.metre) !== formatMetre(now.frame.metre) ||
    before.frame.metre.symbol !== now.frame.metre.symbol;
  const clefs = now.bar.clefs.map((clef, i) =>
    before !== null && lastClef(before.bar, i + 1) === clef ? '' : writeClef(clef, isOne ? null : i + 1),
  );
  const inside = [
    before === null ? textElement('divisions', divisions) : '',
    hasPitch && keyChanges
      ? element(
          'key',
          {},
          textElement('fifths', keyFifths(now.bar.key)),
          textElement('mode', now.bar.key.mode),
        )
      : '',
    timeChanges ? writeTime(now.frame) : '',
    before === null && !isOne ? textElement('staves', part.staves.length) : '',
    ...clefs,
    ...(before === null
      ? part.staves.map((staff, i) => writeStaffDetails(part, staff, isOne ? null : i + 1))
      : []),
    before === null ? writeTranspose(part) : '',
  ].join('');
  return inside === '' ? '' : element('attributes', {}, inside);
}
