// A check held against the evidence of a take. The answer is what was heard, never a verdict on the student: where the
// measurement cannot tell, it says so, and a person decides.

import { unreachable } from '#core';
import { couldNotHear, type Figure, figure, type Passage } from '../evidence/figure.ts';
import type { Evidence } from '../evidence/gather-evidence.ts';
import type { LongNote } from '../evidence/tone.ts';
import type { HeardNote } from '../notes/heard-note.ts';
import type { CheckSpec } from './check-spec.ts';

export type CheckAnswer =
  /** `reached` and `not yet` lie outside the measurement's doubt, `too close to tell` inside it. */
  | {
      readonly answer: 'reached' | 'not yet' | 'too close to tell';
      readonly figure: Figure;
      readonly passages: readonly Passage[];
    }
  | { readonly answer: 'could not hear'; readonly reason: string };

type Heard<Name extends keyof Evidence> = Extract<Evidence[Name], { readonly heard: true }>;

/** Holds a check against evidence. With the heard notes, a check of single notes shows the very notes it speaks of. */
export function judgeCheck(
  spec: CheckSpec,
  evidence: Evidence,
  notes: readonly HeardNote[] = [],
): CheckAnswer {
  switch (spec.kind) {
    case 'phraseLengths':
      return read(evidence, 'phrases', (row) =>
        atLeast(row.figures.differentLengths, spec.atLeast, row.passages),
      );
    case 'phrasesOfBars':
      return read(evidence, 'phrases', (row) => {
        const fit = row.details.phrases.map((p) => Math.abs(p.bars - spec.bars) <= 0.3);
        const doubt = row.figures.count?.uncertainty ?? 0;
        const passages = row.passages.filter((_, i) => fit[i]);
        return atLeast(figure(fit.filter(Boolean).length, doubt, 'count'), spec.atLeast, passages);
      });
    case 'restShare':
      return read(evidence, 'phrases', (row) =>
        between(row.figures.restShare, spec.atLeast, spec.atMost, row.passages),
      );
    case 'mostlyValue':
      return read(evidence, 'noteValues', (row) => mostly(spec, row));
    case 'valueVariety':
      return read(evidence, 'noteValues', (row) =>
        atLeast(row.figures.entropy, spec.atLeastBits, row.passages),
      );
    case 'syncopation':
      return read(evidence, 'syncopation', (row) =>
        atLeast(row.figures.heldOffBeatShare, spec.atLeastShare, row.passages),
      );
    case 'inScale':
      return read(evidence, 'notesChosen', (row) =>
        atLeast(row.figures.inScale, spec.atLeastShare, row.passages),
      );
    case 'chordTones':
      return read(evidence, 'notesChosen', (row) =>
        atLeast(row.figures.chordTonesOnStrongBeats, spec.atLeastShare, row.passages),
      );
    case 'evenTiming':
      return read(evidence, 'timing', (row) => between(row.figures.spread, -1, spec.withinMs, row.passages));
    case 'keepsTempo':
      return read(evidence, 'timing', (row) =>
        between(row.figures.drift, -spec.withinPercent, spec.withinPercent, row.passages),
      );
    case 'swing':
      return read(evidence, 'timing', (row) => between(row.figures.swing, spec.from, spec.to, row.passages));
    case 'longNotes':
      return read(evidence, 'tone', (row) => longNotes(spec, row, notes));
    case 'inTune':
      return read(evidence, 'intonation', (row) =>
        between(row.figures.spread, -1, spec.withinCents, row.passages),
      );
    case 'dynamicRange':
      return read(evidence, 'dynamics', (row) => atLeast(row.figures.range, spec.atLeastDb, row.passages));
    case 'motif':
      return read(evidence, 'motifs', (row) => {
        const times = Math.max(0, ...row.details.motifs.map((motif) => motif.places.length));
        return atLeast(
          figure(times, row.figures.motifs?.uncertainty ?? 0, 'count'),
          spec.times,
          row.passages,
        );
      });
    case 'vibrato':
      return read(evidence, 'tone', (row) => {
        const trembling = row.details.longNotes.filter((note) => note.vibrato !== null);
        const times = trembling.length;
        const passages = times === 0 ? [] : showNotes(trembling, notes, row.passages);
        return atLeast(figure(times, times === 0 ? 0 : 0.5, 'count'), spec.times, passages);
      });
    default:
      return unreachable(spec);
  }
}

function read<Name extends keyof Evidence>(
  evidence: Evidence,
  name: Name,
  answer: (row: Heard<Name>) => CheckAnswer,
): CheckAnswer {
  const row: Evidence[keyof Evidence] = evidence[name];
  // the row of this name is heard, so it is the heard half of its own type
  return row.heard ? answer(row as Heard<Name>) : { answer: 'could not hear', reason: row.reason };
}

function unheard(): CheckAnswer {
  return {
    answer: 'could not hear',
    reason: couldNotHear('The take gives too little to tell this from.').reason,
  };
}

function atLeast(value: Figure | undefined, wanted: number, passages: readonly Passage[]): CheckAnswer {
  if (value === undefined) return unheard();
  const reached = value.value >= wanted - 1e-9;
  const margin = Math.abs(value.value - wanted);
  // a count that is exact reaches what it equals
  const isClose = reached ? margin < value.uncertainty - 1e-9 : margin <= value.uncertainty;
  return { answer: isClose ? 'too close to tell' : reached ? 'reached' : 'not yet', figure: value, passages };
}

function between(
  value: Figure | undefined,
  low: number,
  high: number,
  passages: readonly Passage[],
): CheckAnswer {
  if (value === undefined) return unheard();
  const reached = value.value >= low && value.value <= high;
  const margin = Math.min(Math.abs(value.value - low), Math.abs(value.value - high));
  const isClose = margin < value.uncertainty;
  return { answer: isClose ? 'too close to tell' : reached ? 'reached' : 'not yet', figure: value, passages };
}

function mostly(spec: Extract<CheckSpec, { kind: 'mostlyValue' }>, row: Heard<'noteValues'>): CheckAnswer {
  const value = row.details.values.find((v) => v.name === spec.value);
  const doubt = row.figures.mostUsedShare?.uncertainty ?? 0;
  const share = atLeast(figure(value?.share ?? 0, doubt, 'share'), spec.share, row.passages);
  const others = row.details.values.filter((v) => v.name !== spec.value && v.name !== 'tied').length;
  if (share.answer === 'could not hear' || others >= spec.others) return share;
  return { ...share, answer: 'not yet' };
}

/** Cents by which pitch is heard wrong at most inside a long note, from the take set. */
const pitchDoubt = 2;

/** Most notes shown of one check. */
const mostShown = 6;

/** These notes as passages; the row's own where the notes are not at hand. */
function showNotes(
  shown: readonly LongNote[],
  notes: readonly HeardNote[],
  passages: readonly Passage[],
): readonly Passage[] {
  if (notes.length === 0) return passages;
  return shown.slice(0, mostShown).flatMap(({ note, seconds, farthestCents }) => {
    const heard = notes[note];
    const shows = `held ${seconds.toFixed(1)} s, pitch within ${Math.round(farthestCents)} cents`;
    return heard === undefined ? [] : [{ from: heard.onset, to: heard.offset, bar: null, shows }];
  });
}

function longNotes(
  spec: Extract<CheckSpec, { kind: 'longNotes' }>,
  row: Heard<'tone'>,
  notes: readonly HeardNote[],
): CheckAnswer {
  const held = row.details.longNotes.filter((note) => note.seconds >= spec.seconds - 0.05);
  const within = (cents: number) => held.filter((note) => note.farthestCents <= cents).length;
  const sure = within(spec.withinCents - pitchDoubt);
  const perhaps = within(spec.withinCents + pitchDoubt);
  const value = figure(within(spec.withinCents), Math.max(0, perhaps - sure) / 2, 'count');
  const answer = sure >= spec.times ? 'reached' : perhaps >= spec.times ? 'too close to tell' : 'not yet';
  // The nearest to what is asked for: long ones by how still they are, else the longest.
  const nearest =
    held.length > 0
      ? held.toSorted((a, b) => a.farthestCents - b.farthestCents)
      : row.details.longNotes.toSorted((a, b) => b.seconds - a.seconds).slice(0, 3);
  return { answer, figure: value, passages: showNotes(nearest, notes, row.passages) };
}
