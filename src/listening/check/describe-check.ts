// Checks as sentences.

import { unreachable } from '#core';
import type { CheckSpec } from './check-spec.ts';

/** What is listened for. `{ kind: 'phraseLengths', atLeast: 3 }` → phrases of at least 3 lengths */
export function describeCheck(spec: CheckSpec): string {
  switch (spec.kind) {
    case 'phraseLengths':
      return `phrases of at least ${spec.atLeast} lengths`;
    case 'phrasesOfBars':
      return `at least ${spec.atLeast} phrases of ${spec.bars} bars`;
    case 'restShare':
      return `rests for ${percent(spec.atLeast)} to ${percent(spec.atMost)} of the time`;
    case 'mostlyValue':
      return `mostly ${spec.value}s (${percent(spec.share)}), with ${spec.others} other ${spec.others === 1 ? 'value' : 'values'} for contrast`;
    case 'valueVariety':
      return `note values varied by at least ${spec.atLeastBits} bits`;
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
      return `${spec.times === 1 ? 'a note' : `${spec.times} notes`} held ${spec.seconds} s within ${spec.withinCents} cents`;
    case 'inTune':
      return `notes within ${spec.withinCents} cents of the take's own tuning`;
    case 'dynamicRange':
      return `at least ${spec.atLeastDb} dB from soft to loud`;
    case 'motif':
      return `an idea that comes at least ${spec.times} times`;
    case 'vibrato':
      return `vibrato on at least ${spec.times} long notes`;
    default:
      return unreachable(spec);
  }
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
