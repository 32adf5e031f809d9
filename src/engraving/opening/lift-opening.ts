// Takes title, credits and the opening tempo out of a MusicXML document, to be drawn over the first system. Left in,
// Verovio would push the chord symbols of the whole first system above the tempo mark. A regular expression serves,
// since only the text before the first note is touched and only elements that do not nest.

import type { Heading } from './heading.ts';

export interface Opening {
  readonly musicXml: string;
  readonly heading: Heading;
}

/** The document without what is lifted, and what was. */
export function liftOpening(musicXml: string): Opening {
  const cut = firstNote(musicXml);
  const head = musicXml.slice(0, cut);
  const tempo: string[] = [];
  const left = head
    .replace(/<credit\b[^>]*>[\s\S]*?<\/credit>\s*/g, '')
    .replace(/<direction\b[^>]*>[\s\S]*?<\/direction>\s*/g, (direction) => {
      const words = openingWords(direction);
      if (words === null) return direction;
      tempo.push(...words);
      return '';
    });
  const footer = creditOf(head, 'rights') || textOf(head, 'rights');
  return {
    musicXml: left + musicXml.slice(cut),
    heading: {
      title: textOf(head, 'work-title') || textOf(head, 'movement-title') || creditOf(head, 'title'),
      subtitle: creditOf(head, 'subtitle'),
      credit: creditOf(head, 'composer') || textOf(head, 'creator'),
      instrument: textOf(head, 'instrument-name') || textOf(head, 'part-name'),
      tempo: tempo.join('\u2002'),
      footer,
    },
  };
}

function firstNote(musicXml: string): number {
  const found = /<(note|forward|backup)\b/.exec(musicXml);
  return found === null ? musicXml.length : found.index;
}

/** The words of a direction that says nothing but tempo and feel; null for any other, which stays where it is. */
function openingWords(direction: string): readonly string[] | null {
  if (/<(rehearsal|segno|coda|dynamics|wedge|pedal|octave-shift|metronome-note)\b/.test(direction))
    return null;
  if (/placement="below"/.test(direction)) return null;
  const said: string[] = [];
  for (const [, metronome, words] of direction.matchAll(
    /<metronome\b([\s\S]*?)<\/metronome>|<words\b[^>]*>([\s\S]*?)<\/words>/g,
  )) {
    if (metronome !== undefined) said.push(metronomeText(metronome));
    else if (words !== undefined) said.push(decode(words));
  }
  const isTempo = /<metronome\b|<sound\b[^>]*\btempo=|<swing>/.test(direction);
  return isTempo ? said.filter((text) => text !== '') : null;
}

// SMuFL metronome notes, stems up; the last is the augmentation dot.
const noteByUnit: Readonly<Record<string, string>> = {
  whole: '\uECA2',
  half: '\uECA3',
  quarter: '\uECA5',
  eighth: '\uECA7',
  '16th': '\uECA9',
};
const dot = '\uECB7';

function metronomeText(metronome: string): string {
  const units = [...metronome.matchAll(/<beat-unit>([^<]*)<\/beat-unit>((?:\s*<beat-unit-dot\/>)*)/g)].map(
    ([, unit = '', dots = '']) =>
      (noteByUnit[unit] ?? unit) + dot.repeat((dots.match(/<beat-unit-dot/g) ?? []).length),
  );
  const perMinute = textOf(metronome, 'per-minute');
  return [...units, perMinute].filter((text) => text !== '').join(' = ');
}

function textOf(xml: string, element: string): string {
  const found = new RegExp(`<${element}\\b[^>]*>([^<]*)</${element}>`).exec(xml);
  return decode(found?.[1] ?? '').trim();
}

function creditOf(xml: string, type: string): string {
  for (const [credit] of xml.matchAll(/<credit\b[^>]*>[\s\S]*?<\/credit>/g))
    if (textOf(credit, 'credit-type') === type) return textOf(credit, 'credit-words');
  return '';
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

function decode(text: string): string {
  return text.replace(/&(?:#x([\da-f]{1,6})|#(\d{1,7})|(\w+));/gi, (whole, hex, decimal, name) => {
    if (name !== undefined) return entities[name] ?? whole;
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}
