// A voice of a bar in words: values named once for a run of them, each note with its marks.

import { present } from '#core';
import type { NoteValue } from '../duration/note-value.ts';
import { formatPitch, type Pitch, type PitchName } from '../pitch/pitch.ts';
import { eventValue } from '../score/create-score.ts';
import type { NoteEvent, NoteHead, ScoreEvent } from '../score/score.ts';
import {
  alterWords,
  articulationWords,
  barWords,
  dotWords,
  type NoteNaming,
  tupletWords,
  valueWords,
} from './score-words.data.ts';

/** `F sharp` */
export function nameInWords(name: PitchName): string {
  return name.letter + present(alterWords.get(name.alter), 'at most two accidentals');
}

/** `F sharp 5` */
function pitchInWords(pitch: Pitch): string {
  return `${nameInWords(pitch)} ${pitch.octave}`;
}

/** `dotted crotchet` */
export function valueInWords({ type, dots }: NoteValue, naming: NoteNaming): string {
  return dotWords[dots] + valueWords[naming][type];
}

function headInWords(head: NoteHead, isHeld: boolean): string {
  const marks = [
    isHeld ? 'held over' : '',
    head.shape === 'ghost' ? 'ghosted' : head.shape === 'cross' ? 'without clear pitch' : '',
    head.fingering === null ? '' : `fingering ${head.fingering}`,
    head.string === null ? '' : `string ${head.string}`,
    head.fret === null ? '' : head.fret === 0 ? 'open' : `fret ${head.fret}`,
    head.pluck === null ? '' : `plucked ${head.pluck}`,
  ].filter((mark) => mark !== '');
  return [pitchInWords(head.pitch), ...marks].join(' ');
}

/** A note name under its own note would be told twice. */
function isItsName(lyric: string, { letter, alter }: Pitch): boolean {
  const plain = lyric.replaceAll('♯', '#').replaceAll('♭', 'b');
  return plain === letter + (alter < 0 ? 'b' : '#').repeat(Math.abs(alter)) || plain === letter;
}

function noteInWords(event: NoteEvent, before: ScoreEvent | undefined): string {
  const held = new Set(
    before?.kind === 'note' ? before.heads.filter((h) => h.isTied).map((h) => formatPitch(h.pitch)) : [],
  );
  const heads = event.heads.map((head) => headInWords(head, held.has(formatPitch(head.pitch))));
  const sole = event.heads.length === 1 ? event.heads[0] : undefined;
  const lyric =
    event.lyric === null || (sole !== undefined && isItsName(event.lyric, sole.pitch))
      ? ''
      : `“${event.lyric}”`;
  const marks = [
    event.grace.length === 0 ? '' : `after grace note ${event.grace.map(pitchInWords).join(' ')}`,
    event.heads.some((head) => head.isTied) ? 'tied on' : '',
    event.slur === 'stop' || event.slur === 'stop-start' ? 'slur ends' : '',
    event.slur === 'start' || event.slur === 'stop-start' ? 'slur begins' : '',
    ...event.articulations.map((mark) => articulationWords[mark]),
    lyric,
  ].filter((mark) => mark !== '');
  const body = heads.length === 1 ? heads.join('') : `chord ${heads.join(' and ')}`;
  return [body, ...marks].join(' ');
}

/** What an event is, apart from its value: what runs of one value are made of. */
function contentInWords(event: ScoreEvent, before: ScoreEvent | undefined): string {
  if (event.kind === 'note') return noteInWords(event, before);
  if (event.kind === 'rest') return '';
  const isHeld = before !== undefined && before.kind === event.kind && before.isTied;
  const marks = [
    isHeld ? 'held over' : '',
    event.isTied ? 'tied on' : '',
    ...event.articulations.map((mark) => articulationWords[mark]),
    event.kind === 'hit' && event.lyric !== null ? `“${event.lyric}”` : '',
  ].filter((mark) => mark !== '');
  return [event.kind === 'hit' ? (event.shape === 'cross' ? 'cross' : 'hit') : 'slash', ...marks].join(' ');
}

/** Events of one kind and value, one after the other. */
interface Run {
  readonly kind: ScoreEvent['kind'];
  /** The value, or `note` for heads whose length is not to be read. */
  readonly name: string;
  readonly contents: string[];
  readonly prefix: string;
}

function runInWords({ kind, name, contents }: Run): string {
  const count = contents.length;
  if (kind === 'rest') return count === 1 ? `${name} rest` : `${count} ${name} rests`;
  const [content = ''] = contents;
  if (count === 1) return `${name} ${content}`;
  if (new Set(contents).size > 1) return `${name}s ${contents.join(', ')}`;
  if (kind === 'note') return `${count} ${name}s ${content}`;
  const plural = content.replace(/^(hit|cross|slash)/, (word) => (word === 'hit' ? 'hits' : `${word}es`));
  return `${count} ${name} ${plural}`;
}

/**
 * A voice's events in one bar. `before` is its last event of the bar before. → `quavers C 4, D 4; crotchet E 4 accented;
 * minim rest`
 */
export function eventsInWords(
  events: readonly ScoreEvent[],
  before: ScoreEvent | undefined,
  naming: NoteNaming,
): string {
  const phrases: string[] = [];
  let run: Run | null = null;
  const close = () => {
    if (run !== null) phrases.push(run.prefix + runInWords(run));
    run = null;
  };
  events.forEach((event, i) => {
    if (event.kind === 'rest' && event.isWholeBar) {
      close();
      phrases.push(`${barWords[naming]} of rest`);
      return;
    }
    const isBare = event.kind === 'note' && !event.hasStem;
    const name = isBare ? 'note' : valueInWords(eventValue(event), naming);
    const content = contentInWords(event, i === 0 ? before : events[i - 1]);
    const starts = event.tuplet?.at === 'start';
    if (run !== null && run.kind === event.kind && run.name === name && !starts) run.contents.push(content);
    else {
      close();
      const tuplet = event.tuplet === null ? '' : (tupletWords.get(event.tuplet.actual) ?? 'tuplet');
      run = { kind: event.kind, name, contents: [content], prefix: starts ? `${tuplet} of ` : '' };
    }
    if (event.tuplet?.at === 'end') {
      close();
      const last = phrases.length - 1;
      const isSplit = events[i - event.tuplet.actual + 1]?.tuplet?.at !== 'start';
      if (isSplit)
        phrases[last] = `${phrases[last]}, end of ${tupletWords.get(event.tuplet.actual) ?? 'tuplet'}`;
    }
  });
  close();
  return phrases.join('; ');
}
