// Checks as sentences.

import { unreachable } from '#core';
import type { NoteNaming } from '#music';
import type { CheckSpec } from './check-spec.ts';

/** What is listened for, in British or American names of notes. `{ kind: 'phraseLengths', atLeast: 3 }` → phrases of at least 3 lengths */
export function describeCheck(spec: CheckSpec, naming: NoteNaming = 'british'): string {
  return nameNotes(sayCheck(spec), naming);
}

const american: Readonly<Record<string, string>> = {
  semibreve: 'whole note',
  minim: 'half note',
  crotchet: 'quarter note',
  quaver: 'eighth note',
  semiquaver: 'sixteenth note',
  bar: 'measure',
};

/** A text of British names in the names that a reader uses. `nameNotes('dotted quavers', 'american')` → dotted eighth notes */
export function nameNotes(text: string, naming: NoteNaming): string {
  if (naming === 'british') return text;
  return text.replace(
    /\b(semibreve|minim|crotchet|semiquaver|quaver|bar)(s?)\b/g,
    (whole, name: string, s: string) => {
      const other = american[name];
      return other === undefined ? whole : other + s;
    },
  );
}

function sayCheck(spec: CheckSpec): string {
  switch (spec.kind) {
    case 'phraseLengths':
      return spec.atLeast === 1 ? 'at least one phrase' : `phrases of at least ${spec.atLeast} lengths`;
    case 'phrasesOfBars':
      return `at least ${counted(spec.atLeast, 'phrase')} of ${counted(spec.bars, 'bar')}`;
    case 'restShare':
      return `rests for ${percent(spec.atLeast)} to ${percent(spec.atMost)} of the time`;
    case 'mostlyValue':
      return `mostly ${spec.value}s (at least ${percent(spec.share)} of the notes)${
        spec.others === 0 ? '' : `, with at least ${counted(spec.others, 'other value')} for contrast`
      }`;
    case 'valueVariety':
      return `note values varied by at least ${spec.atLeastBits} bits (one value alone has none, four used alike have 2)`;
    case 'syncopation':
      return `at least ${percent(spec.atLeastShare)} of the notes off the beat and held over`;
    case 'inScale':
      return `at least ${percent(spec.atLeastShare)} of the playing inside the scale`;
    case 'chordTones':
      return `chord tones on at least ${percent(spec.atLeastShare)} of the strong beats`;
    case 'evenTiming':
      return `notes spread no more than ${spec.withinMs} ms about the beat`;
    case 'keepsTempo':
      return `a tempo that changes by no more than ${spec.withinPercent} %`;
    case 'swing':
      return `quavers that swing between ${spec.from}:1 and ${spec.to}:1`;
    case 'longNotes':
      return `${spec.times === 1 ? 'a note' : `${spec.times} notes`} held at least ${spec.seconds} s within ${spec.withinCents} cents`;
    case 'inTune':
      return `notes within ${spec.withinCents} cents of the take's own tuning`;
    case 'dynamicRange':
      return `at least ${spec.atLeastDb} dB from soft to loud`;
    case 'motif':
      return `an idea that is played at least ${spec.times} times`;
    case 'vibrato':
      return `vibrato on at least ${counted(spec.times, 'long note')}`;
    default:
      return unreachable(spec);
  }
}

/** `counted(1, 'bar')` → `1 bar` */
const counted = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
