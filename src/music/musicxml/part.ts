// A part bar by bar: what changes, what stands over the music, and its voices one after another.

import { compare, type Fraction, zero } from '../fraction/fraction.ts';
import { barOffsets, endingSpans } from '../score/bar-places.ts';
import { barRest } from '../score/create-score.ts';
import type { Part, PartBar, Score, ScoreEvent, Voice } from '../score/score.ts';
import { type Situation, writeAttributes } from './attributes.ts';
import { writeLeftBarline, writeRightBarline } from './barline.ts';
import { isBetweenNotes, writeDirection, writeFrameDirections } from './direction.ts';
import { divisionsOf, toDivisions } from './divisions.ts';
import { element, textElement } from './element.ts';
import { writeHarmony } from './harmony.ts';
import { createAccidentals } from './shown-accidentals.ts';
import { type Cue, holds, writeVoice } from './voice.ts';

/** Chords and directions by place; a direction before a chord at the same place. */
function cuesOf(bar: PartBar, isOneStaff: boolean): Cue[] {
  const directions = bar.directions.filter(isBetweenNotes).map((direction) => ({
    at: direction.at,
    write: (offset: number) => writeDirection(direction, offset, isOneStaff),
  }));
  const chords = bar.chords.map(({ at, chord }) => ({
    at,
    write: (offset: number) => writeHarmony(chord, offset, isOneStaff ? null : 1),
  }));
  return [...directions, ...chords].sort((a, b) => compare(a.at, b.at));
}

/** Voices staff by staff; a staff without one rests, under an id above those in use. */
function voicesOf(part: Part, bar: PartBar, length: Fraction): readonly Voice[] {
  const silent = part.staves.flatMap((_, i) =>
    bar.voices.some(({ staff }) => staff === i + 1)
      ? []
      : [{ id: 100 + i, staff: i + 1, events: [barRest(length)] }],
  );
  return [...bar.voices, ...silent].sort((a, b) => a.staff - b.staff || a.id - b.id);
}

/** A part of the score as `<part>`. The top part carries what belongs to the whole score. */
export function writePart(score: Score, part: Part, id: string, isTop: boolean): string {
  const divisions = divisionsOf(part, score.bars);
  const offsets = barOffsets(score.bars);
  const endings = endingSpans(score.bars);
  const accidentals = createAccidentals();
  const isOneStaff = part.staves.length === 1;
  const lastEvents = new Map<number, ScoreEvent>();
  let before: Situation | null = null;
  const measures: string[] = [];
  score.bars.forEach((frame, i) => {
    const bar = part.bars[i];
    if (bar === undefined) return;
    const voices = voicesOf(part, bar, frame.length);
    const shown = accidentals(
      { ...bar, voices },
      (voice, pitch) => holds(lastEvents.get(voice.id), pitch),
      score.bars[i - 1]?.barline === 'double',
    );
    const cues = cuesOf(bar, isOneStaff);
    const backup = element('backup', {}, textElement('duration', toDivisions(frame.length, divisions)));
    const music = voices.flatMap((voice, v) => {
      const lines = writeVoice(
        voice,
        {
          partId: id,
          staves: part.staves,
          bar,
          metre: frame.metre,
          offset: offsets[i] ?? zero,
          divisions,
          before: lastEvents.get(voice.id),
          accidental: (key) => shown.get(`${v}:${key}`) ?? null,
        },
        cues,
      );
      return v === 0 ? lines : [backup, ...lines];
    });
    const lines = [
      frame.startsSystem && i > 0 ? element('print', { 'new-system': 'yes' }) : '',
      writeAttributes(part, divisions, { frame, bar }, before),
      writeLeftBarline(frame, endings.find(({ first }) => first === i) ?? null),
      isTop ? writeFrameDirections(frame) : '',
      ...music,
      writeRightBarline(frame, endings.find(({ last }) => last === i) ?? null),
    ].filter((line) => line !== '');
    measures.push(
      element(
        'measure',
        { number: frame.number, implicit: frame.number === 0 ? 'yes' : null },
        `\n${lines.join('\n')}\n`,
      ),
    );
    before = { frame, bar };
    lastEvents.clear();
    for (const voice of voices) {
      const last = voice.events.at(-1);
      if (last !== undefined) lastEvents.set(voice.id, last);
    }
  });
  return element('part', { id }, `\n${measures.join('\n')}\n`);
}
