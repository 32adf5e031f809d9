// A how-to as one player needs it: where a list goes from instrument to instrument, only the player's own is shown.

import { findInstrument, type Instrument, listInstruments } from '#music';

const item = /^- \*\*([^*:]+):\*\* /;

/** What a list may call a family, beside the names of its instruments. */
const familyNames: Readonly<Record<Instrument['family'], readonly string[]>> = {
  woodwind: ['woodwind'],
  brass: ['brass'],
  strings: ['bowed strings'],
  plucked: ['plucked strings'],
  keyboard: ['keyboard'],
  percussion: ['percussion'],
  voice: ['voice'],
};

function isCalled(instrument: Instrument, label: string): boolean {
  const ownWords = new Set(instrument.name.toLowerCase().split(/\W+/));
  return label
    .toLowerCase()
    .split(/, | and | or /)
    .some(
      (name) =>
        familyNames[instrument.family].includes(name) || name.split(' ').every((word) => ownWords.has(word)),
    );
}

/**
 * The how-to for a player of this instrument (an id). A list each of whose items begins with the name of an instrument
 * or a family, as in `- **Flute:** …`, keeps the items that name the player's own and loses its bullets; a list that
 * names it nowhere, and any other text, stays as it is.
 */
export function howToFor(howTo: string, instrumentId: string): string {
  const instrument = findInstrument(instrumentId);
  if (instrument === null) return howTo;
  const blocks = howTo.split('\n\n').map((block) => {
    const lines = block.split('\n');
    const labels = lines.map((line) => item.exec(line)?.[1] ?? null);
    const goesByInstrument =
      lines.length > 1 &&
      labels.every((label) => label !== null && listInstruments().some((one) => isCalled(one, label)));
    if (!goesByInstrument) return block;
    const own = lines.filter((_, at) => isCalled(instrument, labels[at] ?? ''));
    return own.length === 0 ? block : own.map((line) => line.slice('- '.length)).join('\n\n');
  });
  return blocks.join('\n\n');
}
