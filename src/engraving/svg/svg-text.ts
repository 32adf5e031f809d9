// Text inside a drawing: escaped, with flats, sharps and note values set in the music font, which text fonts lack.

import { escapeXml } from '#music';

/** The family name of `musicTextFont`; whoever shows or prints a drawing makes it known under this name. */
export const musicTextFamily = 'Levare Music Text';

// The small accidentals that Verovio sets in chord symbols: SMuFL's figured bass accidentals.
const smuflByCharacter: Readonly<Record<string, string>> = {
  '♭': '\uEA64',
  '♮': '\uEA65',
  '♯': '\uEA66',
  '𝄪': '\uEA67',
  '𝄫': '\uEA63',
};

/** Text with its musical characters in the music font; `size` is the font size of the text around. */
export function musicText(text: string, size: number): string {
  return markMusic(escapeXml(text), size);
}

/** The same for text that is escaped already. Accidentals keep clear of the letter before, a slanted one too. */
export function markMusic(escaped: string, size: number): string {
  return escaped.replace(/[♭♮♯𝄪𝄫]|[\uE000-\uF8FF]+/gu, (found) => {
    const accidental = smuflByCharacter[found];
    return accidental === undefined
      ? `<tspan font-family="'${musicTextFamily}'" font-weight="400" font-size="${Math.round(size * 1.35)}">${found}</tspan>`
      : `<tspan dx="${Math.round(size * 0.08)}" font-family="'${musicTextFamily}'" font-weight="400" font-size="${Math.round(size * 1.78)}">${accidental}</tspan>`;
  });
}
