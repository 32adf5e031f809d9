// What a test reads out of a MusicXML document, with nothing of ours: clef, key, transposition and pitches of its first part.

export interface SheetFacts {
  /** Sign and line of the first clef: `G2`, `F4`. */
  readonly clef: string;
  readonly fifths: number;
  /** Semitones from written to sounding. */
  readonly transposition: number;
  /** Written key numbers, middle C = 60. */
  readonly notes: readonly number[];
  readonly instrumentSound: string;
}

const naturals: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

export function pitchNumber(step: string, alter: number, octave: number): number {
  return 12 * (octave + 1) + (naturals[step] ?? Number.NaN) + alter;
}

export function readSheetFacts(musicXml: string): SheetFacts {
  const value = (element: string, within = musicXml) =>
    new RegExp(`<${element}\\b[^>]*>([^<]*)</${element}>`).exec(within)?.[1] ?? '';
  const transpose = /<transpose>.*?<\/transpose>/s.exec(musicXml)?.[0] ?? '';
  return {
    clef: value('sign') + value('line'),
    fifths: Number(value('fifths')),
    transposition: Number(value('chromatic', transpose)) + 12 * Number(value('octave-change', transpose)),
    notes: [...musicXml.matchAll(/<pitch>.*?<\/pitch>/gs)].map(([pitch]) =>
      pitchNumber(value('step', pitch), Number(value('alter', pitch)), Number(value('octave', pitch))),
    ),
    instrumentSound: value('instrument-sound'),
  };
}
