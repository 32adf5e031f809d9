// Score → MusicXML 4.0, the interchange form any notation editor opens. Source: W3C MusicXML 4.0 (2021); every text is
// held against its schema in checks/musicxml.

import type { Part, Score } from '../score/score.ts';
import { element, textElement } from './element.ts';
import { writePart } from './part.ts';

const head = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">
`;

/** Percussion keys a part uses, lowest first. */
function drumsOf(part: Part): readonly number[] {
  const events = part.bars.flatMap((bar) => bar.voices.flatMap((voice) => voice.events));
  const drums = events.flatMap((event) => (event.kind === 'hit' ? [event.drum] : []));
  return [...new Set(drums)].sort((a, b) => a - b);
}

/** Channels for parts with pitch: 10 is percussion's. */
const channelOf = (index: number) => (index % 15 < 9 ? (index % 15) + 1 : (index % 15) + 2);

function writeScorePart(part: Part, id: string, index: number): string {
  const { instrument } = part;
  const drums = drumsOf(part);
  const own = `${id}-I1`;
  return element(
    'score-part',
    { id },
    textElement('part-name', part.name === '' ? instrument.name : part.name, {
      'print-object': part.name === '' ? 'no' : null,
    }),
    part.abbreviation === '' ? '' : textElement('part-abbreviation', part.abbreviation),
    element(
      'score-instrument',
      { id: own },
      textElement('instrument-name', instrument.name),
      textElement('instrument-sound', instrument.sound),
    ),
    ...drums.map((drum) =>
      element(
        'score-instrument',
        { id: `${id}-D${drum}` },
        textElement('instrument-name', `Percussion ${drum}`),
      ),
    ),
    element(
      'midi-instrument',
      { id: own },
      textElement('midi-channel', channelOf(index)),
      textElement('midi-program', instrument.program),
    ),
    ...drums.map((drum) =>
      element(
        'midi-instrument',
        { id: `${id}-D${drum}` },
        textElement('midi-channel', 10),
        // MusicXML counts percussion keys from 1.
        textElement('midi-unpitched', drum + 1),
      ),
    ),
  );
}

const credit = (type: string, text: string | null, place: { justify: string; valign: string }) =>
  text === null || text === ''
    ? ''
    : element(
        'credit',
        { page: 1 },
        textElement('credit-type', type),
        textElement('credit-words', text, { justify: place.justify, valign: place.valign }),
      );

function writeHead(score: Score): string {
  const { title, subtitle, credit: by, footer } = score;
  return [
    title === '' ? '' : element('work', {}, textElement('work-title', title)),
    element(
      'identification',
      {},
      by === null ? '' : textElement('creator', by, { type: 'composer' }),
      footer === null ? '' : textElement('rights', footer),
      element(
        'encoding',
        {},
        textElement('software', 'Levare'),
        element('supports', { element: 'accidental', type: 'yes' }),
        element('supports', { element: 'beam', type: 'yes' }),
        element('supports', { element: 'print', attribute: 'new-system', type: 'yes', value: 'yes' }),
      ),
    ),
    credit('title', title, { justify: 'center', valign: 'top' }),
    credit('subtitle', subtitle, { justify: 'center', valign: 'top' }),
    credit('composer', by, { justify: 'right', valign: 'top' }),
    credit('rights', footer, { justify: 'center', valign: 'bottom' }),
  ]
    .filter((line) => line !== '')
    .join('\n');
}

/** The score as a MusicXML 4.0 document. The same score gives the same text. The score is one without faults. */
export function scoreToMusicXml(score: Score): string {
  const ids = score.parts.map((_, i) => `P${i + 1}`);
  const list = score.parts.map((part, i) => writeScorePart(part, ids[i] ?? '', i));
  const parts = score.parts.map((part, i) => writePart(score, part, ids[i] ?? '', i === 0));
  const body = [writeHead(score), element('part-list', {}, ...list), ...parts].join('\n');
  return `${head}${element('score-partwise', { version: '4.0' }, `\n${body}\n`)}\n`;
}
