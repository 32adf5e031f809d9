// What makes a score unsound. Generators and random tests are held to an empty answer; writers take sound scores only.

import { durationToValue } from '../duration/note-value.ts';
import { compare, type Fraction, formatFraction, plus, zero } from '../fraction/fraction.ts';
import { formatPitch, pitchToMidi, type WrittenPitch } from '../pitch/pitch.ts';
import type { Part, PartBar, Score, ScoreBar, ScoreEvent, Voice } from './score.ts';

export interface ScoreFault {
  readonly kind:
    | 'PartUneven'
    | 'BarUnfilled'
    | 'ValueUnwritable'
    | 'TupletBroken'
    | 'TieUnmet'
    | 'SlurUnmet'
    | 'PlaceOutside'
    | 'VoiceRepeated'
    | 'ChordUnordered';
  /** Parts from 1. */
  readonly part: number;
  /** Place in the list of bars, from 1. */
  readonly bar: number;
  readonly message: string;
}

type Report = (kind: ScoreFault['kind'], what: string) => void;

const sumOf = (events: readonly ScoreEvent[]): Fraction =>
  events.reduce((sum, event) => plus(sum, event.duration), zero);

/** Whether the event sounds a pitch (or for null, is a slash or hit), so that a tie can end on it. */
function sounds(event: ScoreEvent | undefined, pitch: WrittenPitch | null): boolean {
  if (event === undefined || event.kind === 'rest') return false;
  if (pitch === null) return event.kind !== 'note';
  const name = formatPitch(pitch);
  return event.kind === 'note' && event.heads.some((head) => formatPitch(head.pitch) === name);
}

function tiesOf(event: ScoreEvent): readonly (WrittenPitch | null)[] {
  if (event.kind === 'rest') return [];
  if (event.kind === 'note') return event.heads.flatMap(({ pitch, isTied }) => (isTied ? [pitch] : []));
  return event.isTied ? [null] : [];
}

function checkValues(events: readonly ScoreEvent[], length: Fraction, report: Report): void {
  let open: ScoreEvent['tuplet'] = null;
  for (const event of events) {
    const { tuplet, duration } = event;
    const shown = formatFraction(duration);
    if (event.kind === 'rest' && event.isWholeBar) {
      if (compare(duration, length) !== 0 || tuplet !== null)
        report('BarUnfilled', `a whole-bar rest lasts ${shown}, not the bar`);
    } else if (duration.n <= 0 || durationToValue(duration, tuplet) === null)
      report('ValueUnwritable', `no single note lasts ${shown}`);
    const isOpen = open !== null;
    const belongs = tuplet === null ? !isOpen : (tuplet.at === 'start') === !isOpen;
    const isSame =
      tuplet === null || open === null || (tuplet.actual === open.actual && tuplet.normal === open.normal);
    if (!belongs || !isSame) report('TupletBroken', 'a tuplet does not run from its start to its end');
    open = tuplet === null || tuplet.at === 'end' ? null : tuplet;
  }
  if (open !== null) report('TupletBroken', 'a tuplet has no end in its bar');
}

function checkHeads(events: readonly ScoreEvent[], report: Report): void {
  for (const event of events) {
    if (event.kind !== 'note') continue;
    if (event.heads.length === 0) report('ChordUnordered', 'a note has no head');
    const heights = event.heads.map(({ pitch }) => pitchToMidi(pitch));
    if (heights.some((height, i) => i > 0 && height <= (heights[i - 1] ?? 0)))
      report('ChordUnordered', 'heads do not rise');
  }
}

function checkPlaces(part: Part, bar: PartBar, frame: ScoreBar, report: Report): void {
  const { staves } = part;
  const ids = bar.voices.map(({ id }) => id);
  if (new Set(ids).size !== ids.length) report('VoiceRepeated', 'two voices have the same id');
  if (bar.clefs.length !== staves.length) report('PlaceOutside', 'clefs and staves are not one for one');
  const isStaff = (staff: number) => Number.isInteger(staff) && staff >= 1 && staff <= staves.length;
  for (const { staff } of [...bar.voices, ...bar.directions])
    if (!isStaff(staff)) report('PlaceOutside', `there is no staff ${staff}`);
  for (const { at } of [...bar.chords, ...bar.directions])
    if (at.n < 0 || compare(at, frame.length) > 0)
      report('PlaceOutside', `${formatFraction(at)} lies outside the bar`);
}

/** A clef inside a bar stands where its staff's first voice begins a sound or rest. */
function checkClefChanges(bar: PartBar, report: Report): void {
  for (const { at, staff } of bar.clefChanges) {
    let start = zero;
    const starts = (bar.voices.find((voice) => voice.staff === staff)?.events ?? []).map(({ duration }) => {
      const here = start;
      start = plus(start, duration);
      return here;
    });
    if (at.n <= 0 || !starts.some((place) => compare(place, at) === 0))
      report('PlaceOutside', `a clef at ${formatFraction(at)} stands before no note`);
  }
}

/** Every fault of a score, in order; empty when it is sound. */
export function findScoreFaults(score: Score): readonly ScoreFault[] {
  const faults: ScoreFault[] = [];
  score.parts.forEach((part, p) => {
    const reportAt =
      (bar: number): Report =>
      (kind, what) => {
        faults.push({ kind, part: p + 1, bar: bar + 1, message: `Part ${p + 1}, bar ${bar + 1}: ${what}.` });
      };
    if (part.bars.length !== score.bars.length)
      reportAt(part.bars.length)('PartUneven', `${part.bars.length} bars in a score of ${score.bars.length}`);
    const slurs = new Map<number, boolean>();
    part.bars.forEach((bar, b) => {
      const frame = score.bars[b];
      if (frame === undefined) return;
      const report = reportAt(b);
      checkPlaces(part, bar, frame, report);
      checkClefChanges(bar, report);
      for (const voice of bar.voices) {
        const sum = sumOf(voice.events);
        if (compare(sum, frame.length) !== 0)
          report(
            'BarUnfilled',
            `voice ${voice.id} fills ${formatFraction(sum)} of ${formatFraction(frame.length)}`,
          );
        checkValues(voice.events, frame.length, report);
        checkHeads(voice.events, report);
        checkTies(voice, part.bars[b + 1], report);
        checkSlurs(voice, slurs, report);
      }
    });
    if ([...slurs.values()].includes(true)) reportAt(part.bars.length - 1)('SlurUnmet', 'a slur has no end');
  });
  return faults;
}

function checkTies(voice: Voice, next: PartBar | undefined, report: Report): void {
  const after = next?.voices.find(({ id }) => id === voice.id)?.events[0];
  voice.events.forEach((event, i) => {
    const follower = i === voice.events.length - 1 ? after : voice.events[i + 1];
    for (const pitch of tiesOf(event)) {
      if (!sounds(follower, pitch))
        report(
          'TieUnmet',
          `a tie from ${pitch === null ? 'a slash or hit' : formatPitch(pitch)} leads nowhere`,
        );
    }
  });
}

function checkSlurs(voice: Voice, slurs: Map<number, boolean>, report: Report): void {
  for (const event of voice.events) {
    if (event.kind !== 'note' || event.slur === null) continue;
    const isOpen = slurs.get(voice.id) === true;
    const closes = event.slur !== 'start';
    if (closes !== isOpen)
      report('SlurUnmet', closes ? 'a slur ends that never began' : 'a slur begins inside another');
    slurs.set(voice.id, event.slur !== 'stop');
  }
}
