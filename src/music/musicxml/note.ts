// One event of a voice as `<note>` elements.

import { present } from '#core';
import type { TupletRatio } from '../duration/note-value.ts';
import { transposePitch } from '../pitch/interval.ts';
import type { Pitch, WrittenPitch } from '../pitch/pitch.ts';
import type { Beam } from '../rhythm/beams.ts';
import { eventValue } from '../score/create-score.ts';
import type { Articulation, NoteHead, ScoreEvent, SlurPlace } from '../score/score.ts';
import { element, textElement } from './element.ts';
import type { ShownAccidental } from './shown-accidentals.ts';

/** What surrounds an event: where it stands, what leads into it, and what the bar makes of it. */
export interface NotePlace {
  /** Length in divisions. */
  readonly duration: number;
  readonly voice: number;
  /** null in a part of one staff. */
  readonly staff: number | null;
  readonly beams: readonly Beam[];
  /** Whether a tie leads into a pitch, or with null into a slash or hit. */
  readonly isHeld: (pitch: WrittenPitch | null) => boolean;
  /** By head, or `g0` for grace notes. */
  readonly accidental: (head: number | `g${number}`) => ShownAccidental | null;
  /** The line a slash sits on. */
  readonly middle: Pitch;
  /** Tuplets show a bracket where no beam joins them. */
  readonly isBracketed: boolean;
  /** Drawn without stem, flag and beam; otherwise stems are the engraver's. */
  readonly isStemless: boolean;
  /** Where a percussion sound is declared. */
  readonly drumId: (drum: number) => string;
  /** Whether the staff has one line, and what belongs on the middle line sits there. */
  readonly isOneLine: boolean;
}

const accidentalNames: ReadonlyMap<number, string> = new Map([
  [-2, 'flat-flat'],
  [-1, 'flat'],
  [0, 'natural'],
  [1, 'sharp'],
  [2, 'double-sharp'],
]);

const articulationNames = {
  staccato: 'staccato',
  tenuto: 'tenuto',
  accent: 'accent',
  marcato: 'strong-accent',
  staccatissimo: 'staccatissimo',
  breath: 'breath-mark',
} as const;

function writePitch(pitch: Pitch): string {
  return element(
    'pitch',
    {},
    textElement('step', pitch.letter),
    pitch.alter === 0 ? '' : textElement('alter', pitch.alter),
    textElement('octave', pitch.octave),
  );
}

function writeAccidental(shown: ShownAccidental | null): string {
  if (shown === null) return '';
  const name = present(accidentalNames.get(shown.alter), 'an accidental of at most two signs');
  return textElement('accidental', name, shown.isCourtesy ? { cautionary: 'yes', parentheses: 'yes' } : {});
}

/** Type and dots; nothing for a whole-bar rest. */
function writeType(event: ScoreEvent): string {
  if (event.kind === 'rest' && event.isWholeBar) return '';
  const { type, dots } = eventValue(event);
  return textElement('type', type) + '<dot/>'.repeat(dots);
}

function writeTimeModification({ actual, normal }: TupletRatio): string {
  return element(
    'time-modification',
    {},
    textElement('actual-notes', actual),
    textElement('normal-notes', normal),
  );
}

function writeSlur(slur: SlurPlace, number: number): string {
  const stop = element('slur', { type: 'stop', number });
  const start = element('slur', { type: 'start', number });
  return (slur === 'stop' || slur === 'stop-start' ? stop : '') + (slur?.endsWith('start') ? start : '');
}

function writeArticulations(articulations: readonly Articulation[]): string {
  let plain = '';
  let bows = '';
  let fermata = '';
  for (const mark of articulations) {
    if (mark === 'fermata') fermata = element('fermata', { type: 'upright' });
    else if (mark === 'up-bow' || mark === 'down-bow') bows += `<${mark}/>`;
    else plain += `<${articulationNames[mark]}/>`;
  }
  return (
    (bows === '' ? '' : element('technical', {}, bows)) +
    (plain === '' ? '' : element('articulations', {}, plain)) +
    fermata
  );
}

/** Under a lower staff the left hand's fingerings stand below, clear of the right hand's notes. */
function writeTechnical(head: NoteHead, staff: number | null): string {
  const placement = staff === null || staff === 1 ? null : 'below';
  const inside = [
    head.fingering === null ? '' : textElement('fingering', head.fingering, { placement }),
    head.pluck === null ? '' : textElement('pluck', head.pluck),
    head.string === null ? '' : textElement('string', head.string),
    head.fret === null ? '' : textElement('fret', head.fret),
  ].join('');
  return inside === '' ? '' : element('technical', {}, inside);
}

const ties = (name: 'tie' | 'tied', isHeld: boolean, isTied: boolean) =>
  (isHeld ? element(name, { type: 'stop' }) : '') + (isTied ? element(name, { type: 'start' }) : '');

const notations = (inside: string) => (inside === '' ? '' : element('notations', {}, inside));

const headShapes = {
  normal: '',
  cross: textElement('notehead', 'x'),
  slash: textElement('notehead', 'slash'),
};
const ghost = textElement('notehead', 'normal', { parentheses: 'yes' });

/** What the event's first note carries for all of it. */
function writeEventNotations(event: ScoreEvent, place: NotePlace): string {
  const tuplet =
    event.tuplet === null || event.tuplet.at === 'middle'
      ? ''
      : element('tuplet', {
          type: event.tuplet.at === 'start' ? 'start' : 'stop',
          number: 1,
          bracket: event.tuplet.at === 'end' ? null : place.isBracketed ? 'yes' : 'no',
        });
  if (event.kind === 'rest') return tuplet;
  const slur = event.kind === 'note' ? writeSlur(event.slur, ((place.voice - 1) % 16) + 1) : '';
  return slur + tuplet + writeArticulations(event.articulations);
}

const writeLyric = (text: string | null) =>
  text === null
    ? ''
    : element('lyric', { number: 1 }, textElement('syllabic', 'single'), textElement('text', text));

interface Written {
  /** Up to and with the pitch, unpitched or rest. */
  readonly head: string;
  readonly ties: string;
  readonly instrument?: string;
  readonly accidental?: string;
  readonly shape?: string;
  readonly notations: string;
  readonly lyric?: string;
}

/** The children of `<note>` in the schema's order. */
function assemble(event: ScoreEvent, place: NotePlace, isFirst: boolean, parts: Written): string {
  const isHidden = event.kind === 'rest' && event.isHidden;
  const isBare = (event.kind === 'slash' || event.kind === 'note') && !event.hasStem;
  const isStemless = place.isStemless || isBare;
  return element(
    'note',
    { 'print-object': isHidden ? 'no' : null },
    parts.head,
    textElement('duration', place.duration),
    parts.ties,
    parts.instrument ?? '',
    textElement('voice', place.voice),
    writeType(event),
    parts.accidental ?? '',
    event.tuplet === null ? '' : writeTimeModification(event.tuplet),
    isStemless ? textElement('stem', 'none') : '',
    parts.shape ?? '',
    place.staff === null ? '' : textElement('staff', place.staff),
    ...(isFirst ? place.beams.map((beam, i) => textElement('beam', beam, { number: i + 1 })) : []),
    notations(parts.notations),
    parts.lyric ?? '',
  );
}

function writeGrace(pitch: WrittenPitch, index: number, place: NotePlace): string {
  return element(
    'note',
    {},
    element('grace', { slash: 'yes' }),
    writePitch(pitch),
    textElement('voice', place.voice),
    textElement('type', 'eighth'),
    writeAccidental(place.accidental(`g${index}`)),
    place.staff === null ? '' : textElement('staff', place.staff),
  );
}

/** From the middle line to the bottom one: a single line is counted as the lowest of five (MusicXML 4.0, clef and line). */
const toOneLine = { diatonic: -4, chromatic: -7 };

/** An event as MusicXML, grace notes first; a chord is one `<note>` for each head. */
export function writeEventNotes(event: ScoreEvent, place: NotePlace): string {
  const shared = writeEventNotations(event, place);
  switch (event.kind) {
    case 'rest': {
      const head = element('rest', { measure: event.isWholeBar ? 'yes' : null });
      return assemble(event, place, true, { head, ties: '', notations: shared });
    }
    case 'slash': {
      const held = place.isHeld(null);
      return assemble(event, place, true, {
        head: writePitch(place.middle),
        ties: ties('tie', held, event.isTied),
        shape: headShapes.slash,
        notations: ties('tied', held, event.isTied) + shared,
      });
    }
    case 'hit': {
      const held = place.isHeld(null);
      const at = place.isOneLine ? transposePitch(event.place, toOneLine) : event.place;
      const head = element(
        'unpitched',
        {},
        textElement('display-step', at.letter),
        textElement('display-octave', at.octave),
      );
      return assemble(event, place, true, {
        head,
        ties: ties('tie', held, event.isTied),
        instrument: element('instrument', { id: place.drumId(event.drum) }),
        shape: headShapes[event.shape],
        notations: ties('tied', held, event.isTied) + shared,
        lyric: writeLyric(event.lyric),
      });
    }
    case 'note': {
      const graces = event.grace.map((pitch, i) => writeGrace(pitch, i, place));
      const heads = event.heads.map((head, i) => {
        const held = place.isHeld(head.pitch);
        return assemble(event, place, i === 0, {
          head: (i === 0 ? '' : '<chord/>') + writePitch(head.pitch),
          ties: ties('tie', held, head.isTied),
          accidental: writeAccidental(place.accidental(i)),
          shape: head.shape === 'ghost' ? ghost : headShapes[head.shape],
          notations:
            ties('tied', held, head.isTied) + (i === 0 ? shared : '') + writeTechnical(head, place.staff),
          lyric: i === 0 ? writeLyric(event.lyric) : '',
        });
      });
      return [...graces, ...heads].join('\n');
    }
  }
}
