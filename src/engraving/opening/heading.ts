// What stands over the first system of a sheet, drawn by us and not by Verovio: title, instrument, tempo and feel.

export interface Heading {
  readonly title: string;
  readonly subtitle: string;
  /** At the right of the title: composer, source or the student's name. */
  readonly credit: string;
  /** The instrument it is written for. */
  readonly instrument: string;
  /** `♩ = 96  Swing`; note values as SMuFL characters. */
  readonly tempo: string;
  /** At the foot of every page. */
  readonly footer: string;
}

export const noHeading: Heading = {
  title: '',
  subtitle: '',
  credit: '',
  instrument: '',
  tempo: '',
  footer: '',
};

/** Whether there is anything to draw above the music. */
export function isHeadingEmpty(heading: Heading): boolean {
  return !(heading.title || heading.subtitle || heading.credit || heading.instrument || heading.tempo);
}
