// Which accidentals stand before notes. Source: standard practice (Gould, Behind Bars 2011, recalled): an accidental holds
// for its line or space to the end of the bar; a tie carries it over the bar line, and no further; a courtesy accidental
// recalls the signature where the same note was altered otherwise in the bar before, or its letter in another octave of
// this bar. A new exercise starts afresh: the reader has a signature before the eyes and nothing of the last one in mind.

import type { Fraction } from '../fraction/fraction.ts';
import { compare, plus, zero } from '../fraction/fraction.ts';
import { keyFifths, signatureAlters } from '../key/key.ts';
import type { Letter, Pitch, WrittenPitch } from '../pitch/pitch.ts';
import type { PartBar, Voice } from '../score/score.ts';

export interface ShownAccidental {
  readonly alter: number;
  readonly isCourtesy: boolean;
}

/** Accidentals by `voice:event:head`, and by `voice:event:g0` for grace notes. */
export type ShownAccidentals = ReadonlyMap<string, ShownAccidental>;

interface Reading {
  readonly at: Fraction;
  readonly staff: number;
  readonly key: string;
  readonly pitch: WrittenPitch;
  /** Held over from the bar before: no accidental, and none remembered. */
  readonly isHeld: boolean;
}

const placeOf = (staff: number, pitch: Pitch) => `${staff}:${pitch.letter}${pitch.octave}`;

/** Everything in the bar in the order it is read: by time, then by voice. */
function readings(bar: PartBar, isHeld: (voice: Voice, pitch: WrittenPitch) => boolean): readonly Reading[] {
  const all: Reading[] = [];
  bar.voices.forEach((voice, v) => {
    let at = zero;
    voice.events.forEach((event, e) => {
      if (event.kind === 'note') {
        event.grace.forEach((pitch, g) => {
          all.push({ at, staff: voice.staff, key: `${v}:${e}:g${g}`, pitch, isHeld: false });
        });
        event.heads.forEach(({ pitch }, h) => {
          const held = e === 0 && isHeld(voice, pitch);
          all.push({ at, staff: voice.staff, key: `${v}:${e}:${h}`, pitch, isHeld: held });
        });
      }
      at = plus(at, event.duration);
    });
  });
  return all.sort((a, b) => compare(a.at, b.at));
}

/**
 * Remembers the bar before, so bars are asked in order. `isHeld` says whether a tie leads into the bar's first event;
 * `isFresh` that a new exercise starts with the bar, as a new key always does.
 */
export function createAccidentals(): (
  bar: PartBar,
  isHeld: (voice: Voice, pitch: WrittenPitch) => boolean,
  isFresh?: boolean,
) => ShownAccidentals {
  /** Alterations of each line and space on each staff in the bar before. */
  let before: ReadonlyMap<string, ReadonlySet<number>> = new Map();
  let keyBefore: number | null = null;
  return (bar, isHeld, isFresh = false) => {
    if (isFresh || keyBefore !== keyFifths(bar.key)) before = new Map();
    keyBefore = keyFifths(bar.key);
    const signature = signatureAlters(keyFifths(bar.key));
    const shown = new Map<string, ShownAccidental>();
    const inForce = new Map<string, number>();
    const heard = new Map<string, Set<number>>();
    const heardHere = new Map<string, Set<number>>();
    for (const { staff, key, pitch, isHeld: held } of readings(bar, isHeld)) {
      const letter = `${staff}:${pitch.letter}`;
      const remember = heard.get(letter) ?? new Set<number>();
      heard.set(letter, remember.add(pitch.alter));
      const place = placeOf(staff, pitch);
      const here = heardHere.get(place) ?? new Set<number>();
      heardHere.set(place, here.add(pitch.alter));
      if (held) continue;
      const needed = (inForce.get(place) ?? plain(signature, pitch)) !== pitch.alter;
      const isFirst = !inForce.has(place);
      const doubtful = (alters: ReadonlySet<number> | undefined) =>
        [...(alters ?? [])].some((alter) => alter !== pitch.alter);
      const isCourtesy = !needed && isFirst && (doubtful(before.get(place)) || doubtful(heard.get(letter)));
      inForce.set(place, pitch.alter);
      if (needed || isCourtesy) shown.set(key, { alter: pitch.alter, isCourtesy });
    }
    before = heardHere;
    return shown;
  };
}

function plain(signature: Readonly<Record<Letter, number>>, pitch: Pitch): number {
  return signature[pitch.letter];
}
