// Chord symbols as `<harmony>`: kind and degrees for those who reckon, our own suffix as `text` for those who read.

import type { Chord } from '../chord/chord.ts';
import type { KindDegree } from '../chord/quality.ts';
import type { PitchName } from '../pitch/pitch.ts';
import { element, textElement } from './element.ts';

function writeName(name: PitchName, of: 'root' | 'bass'): string {
  const alter = name.alter === 0 ? '' : textElement(`${of}-alter`, name.alter);
  return element(of, {}, textElement(`${of}-step`, name.letter), alter);
}

/** Degrees stand in the suffix already, so they are not printed again. */
function writeDegree({ value, alter, type }: KindDegree): string {
  return element(
    'degree',
    { 'print-object': 'no' },
    textElement('degree-value', value),
    textElement('degree-alter', alter),
    textElement('degree-type', type),
  );
}

/** A suffix with music's own signs. `m7b5` → `m7♭5` */
function printedSuffix(suffix: string): string {
  return suffix.replace(/b(?=\d)/g, '♭').replace(/#(?=\d)/g, '♯');
}

/** A chord, or N.C. for null; `offset` in divisions from where the writer stands. */
export function writeHarmony(chord: Chord | null, offset: number, staff: number | null): string {
  const place = [
    offset === 0 ? '' : textElement('offset', offset),
    staff === null ? '' : textElement('staff', staff),
  ];
  if (chord === null) {
    // The schema asks for a root; an empty text leaves it unprinted.
    const root = element('root', {}, textElement('root-step', 'C', { text: '' }));
    return element(
      'harmony',
      { placement: 'above' },
      root,
      textElement('kind', 'none', { text: 'N.C.' }),
      ...place,
    );
  }
  return element(
    'harmony',
    { placement: 'above' },
    writeName(chord.root, 'root'),
    textElement('kind', chord.quality.kind, { text: printedSuffix(chord.quality.suffix) }),
    chord.bass === null ? '' : writeName(chord.bass, 'bass'),
    ...chord.quality.kindDegrees.map(writeDegree),
    ...place,
  );
}
