// Sections, tempo, feel, words, dynamics and pedal as `<direction>`.

import { unreachable } from '#core';
import type { Direction, ScoreBar, SwingMark, TempoMark } from '../score/score.ts';
import { crotchetsPerMinute } from '../score/tempo.ts';
import { element, textElement } from './element.ts';

function writeMetronome({ unit, perMinute }: TempoMark): string {
  return element(
    'metronome',
    { parentheses: 'no' },
    textElement('beat-unit', unit.type),
    '<beat-unit-dot/>'.repeat(unit.dots),
    textElement('per-minute', perMinute),
  );
}

function writeSwing({ long, short, unit }: SwingMark): string {
  if (long === short) return element('swing', {}, '<straight/>');
  return element(
    'swing',
    {},
    textElement('first', long),
    textElement('second', short),
    textElement('swing-type', unit),
  );
}

const directionType = (content: string) => element('direction-type', {}, content);

/** What the frame says at the start of a bar: section, tempo and feel. */
export function writeFrameDirections(bar: ScoreBar): string {
  let xml = '';
  if (bar.section !== null) {
    const box = textElement('rehearsal', bar.section, { enclosure: 'rectangle' });
    xml += element('direction', { placement: 'above' }, directionType(box));
  }
  const { tempo, swing } = bar;
  if (tempo === null && swing === null) return xml;
  // “Medium swing” says already what “Swing” would.
  const isSaid =
    swing?.text != null && tempo?.text?.toLowerCase().includes(swing.text.toLowerCase()) === true;
  const texts = [tempo?.text ?? null, isSaid ? null : (swing?.text ?? null)].filter((text) => text !== null);
  const sound = element(
    'sound',
    {
      // MusicXML counts crotchets whatever the printed unit.
      tempo: tempo === null ? null : Math.round(crotchetsPerMinute(tempo) * 1000) / 1000,
    },
    swing === null ? '' : writeSwing(swing),
  );
  const types = [
    texts.length === 0
      ? ''
      : directionType(textElement('words', texts.join(', '), { 'font-weight': 'bold' })),
    tempo?.isFigureShown === true ? directionType(writeMetronome(tempo)) : '',
  ].join('');
  return xml + (types === '' ? sound : element('direction', { placement: 'above' }, types, sound));
}

function content(direction: Direction, staff: number): string {
  switch (direction.kind) {
    case 'words':
      return textElement('words', direction.text, {
        'font-style': direction.style === 'italic' ? 'italic' : null,
        'font-weight': direction.style === 'bold' ? 'bold' : null,
      });
    case 'dynamic':
      return element('dynamics', {}, `<${direction.mark}/>`);
    case 'hairpin':
      return element('wedge', { type: direction.shape, number: staff });
    case 'hairpin-end':
      return element('wedge', { type: 'stop', number: staff });
    case 'octave-up':
      return element('octave-shift', { type: 'down', size: 8, number: staff });
    case 'octave-end':
      return element('octave-shift', { type: 'stop', size: 8, number: staff });
    case 'pedal':
      return element('pedal', { type: direction.foot === 'down' ? 'start' : 'stop', line: 'yes' });
    default:
      return unreachable(direction);
  }
}

/** Whether a direction stands at a time of the bar; octave lines begin before a note and end after one of their own staff. */
export const isBetweenNotes = ({ kind }: Direction): boolean => kind !== 'octave-up' && kind !== 'octave-end';

/** A direction of a part; `offset` in divisions from where the writer stands. */
export function writeDirection(direction: Direction, offset: number, isOneStaff: boolean): string {
  const isOctave = direction.kind === 'octave-up' || direction.kind === 'octave-end';
  const placement = direction.kind === 'words' ? direction.placement : isOctave ? 'above' : 'below';
  return element(
    'direction',
    { placement },
    directionType(content(direction, direction.staff)),
    offset === 0 ? '' : textElement('offset', offset),
    isOneStaff ? '' : textElement('staff', direction.staff),
  );
}
