// A plain reader of MusicXML for what sounds: an own way from text to notes, sharing nothing with the writers.
import { XmlDocument, type XmlElement } from 'libxml2-wasm';

export interface Sound {
  /** From 0. */
  readonly part: number;
  readonly isDrum: boolean;
  readonly midi: number;
  /** Crotchets from the beginning. */
  readonly start: number;
  readonly duration: number;
}

const semitones: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

const text = (node: XmlElement, path: string): string | null => node.get(path)?.content ?? null;
const number = (node: XmlElement, path: string): number => Number(text(node, path) ?? 0);

function keyOf(note: XmlElement, document: XmlDocument, transpose: number): number | null {
  const drum = note.get('unpitched') === null ? null : text(note, 'instrument/@id');
  if (drum !== null) {
    const declared = document.get(
      `/score-partwise/part-list/score-part/midi-instrument[@id='${drum}']/midi-unpitched`,
    );
    return Number(declared?.content) - 1;
  }
  const step = text(note, 'pitch/step');
  if (step === null || text(note, 'notehead') === 'slash') return null;
  return (
    12 * (number(note, 'pitch/octave') + 1) + (semitones[step] ?? 0) + number(note, 'pitch/alter') + transpose
  );
}

/** Every sounding note of a partwise document without repeats; ties joined. */
export function soundsOfMusicXml(xml: string): readonly Sound[] {
  const document = XmlDocument.fromString(xml);
  const sounds: Sound[] = [];
  try {
    for (const [index, part] of document.find('/score-partwise/part').entries()) {
      let [measureStart, divisions, transpose] = [0, 1, 0];
      const open = new Map<string, { -readonly [K in keyof Sound]: Sound[K] }>();
      for (const measure of part.find('measure')) {
        let [now, start, furthest] = [measureStart, measureStart, measureStart];
        for (const node of measure.find('*')) {
          const element = node as XmlElement;
          const length = number(element, 'duration') / divisions;
          if (element.name === 'attributes') {
            divisions = number(element, 'divisions') || divisions;
            if (element.get('transpose') !== null)
              transpose =
                number(element, 'transpose/chromatic') + 12 * number(element, 'transpose/octave-change');
          } else if (element.name === 'backup') now -= length;
          else if (element.name === 'note') {
            if (element.get('chord') === null) {
              start = now;
              now += length;
            }
            furthest = Math.max(furthest, now);
            const midi = keyOf(element, document, transpose);
            if (midi === null) continue;
            const isDrum = element.get('unpitched') !== null;
            const key = `${text(element, 'voice')} ${midi} ${isDrum}`;
            const before = element.get("tie[@type='stop']") === null ? undefined : open.get(key);
            const sound = before ?? { part: index, isDrum, midi, start, duration: 0 };
            sound.duration += length;
            if (before === undefined) sounds.push(sound);
            if (element.get("tie[@type='start']") === null) open.delete(key);
            else open.set(key, sound);
          }
        }
        measureStart = furthest;
      }
    }
  } finally {
    document.dispose();
  }
  return sounds;
}
