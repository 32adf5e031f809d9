// The score in sentences: what a screen reader says and the caption shows of a bar or a segment.

import type { BarView, LessonBarView, SegmentView, StrandView } from '#contract';
import type { PlainDate, PlainTime } from '#core';
import { sentenceCase } from '../app/sentence-case.ts';
import { words } from '../words/index.ts';
import { type BarTimes, isGiven } from './timeline.ts';

const say = words.score;

/** How days, times and shares are written here. */
export interface Writing {
  readonly day: (date: PlainDate) => string;
  readonly time: (time: PlainTime) => string;
  readonly share: (share: number) => string;
}

export interface Description {
  readonly title: string;
  /** Facts, joined by the reader with commas or dots. */
  readonly facts: readonly string[];
  /** Why it stands here. */
  readonly reasons: readonly string[];
}

/** A bar of any kind. */
export function describeBar(bar: BarView, times: BarTimes | null, writing: Writing): Description {
  if (bar.kind === 'rest') {
    return { title: bar.name, facts: [say.fromTo(writing.day(bar.from), writing.day(bar.to))], reasons: [] };
  }
  const facts = [writing.day(bar.date), writing.time(bar.time), say.minutes(bar.minutes)];
  if (isGiven(bar)) facts.push(say.status[bar.status]);
  else facts.push(say.gone(bar.status, bar.reason));
  if (isGiven(bar) && bar.absent.length > 0) facts.push(words.lesson.away.without(bar.absent));
  if (bar.barred) facts.push(say.keptFree);
  if (bar.status === 'planned' && bar.overrun > 0) facts.push(say.overrun(writing.share(bar.overrun)));
  if (bar.status === 'taught' && times && times.skipped.length > 0)
    facts.push(say.passedOver(times.skipped.map((segment) => segment.title).join(', ')));
  return { title: say.lesson(bar.number), facts, reasons: [] };
}

/** A segment in its lesson. `start`, `minutes` and `strand` as they are drawn. */
export function describeSegment(
  segment: SegmentView,
  bar: LessonBarView,
  at: { readonly start: number; readonly minutes: number },
  strand: StrandView | null,
  writing: Writing,
): Description {
  const facts: string[] = [];
  if (strand) facts.push(strand.name);
  if (segment.kind !== 'work' && say.kind[segment.kind] !== segment.title.toLowerCase())
    facts.push(say.kind[segment.kind]);
  const taught = bar.status === 'taught' && segment.actualMinutes !== null;
  facts.push(taught ? say.took(Math.round(at.minutes), segment.minutes) : say.minutes(segment.minutes));
  facts.push(`${say.lesson(bar.number)}, ${writing.day(bar.date)}, ${say.at(Math.round(at.start))}`);
  if (segment.outcome !== null) facts.push(say.outcome[segment.outcome]);
  if (segment.endsUnit) facts.push(say.checkHere);
  else if (segment.completes) facts.push(say.completes);
  if (segment.pinned) facts.push(say.pinned);
  if (segment.moved) facts.push(say.moved);
  return { title: sentenceCase(segment.title), facts, reasons: segment.reasons };
}

/** One line of it for a name: title and facts, then the reasons. */
export const descriptionToText = ({ title, facts, reasons }: Description): string =>
  joinSentences([[title, ...facts].join(', '), ...reasons]);

/** Sets texts one after another, each ended by one full stop. `joinSentences(['a', 'B.'])` → `a. B.` */
export const joinSentences = (texts: readonly string[]): string =>
  texts
    .filter(Boolean)
    .map((text) => (/[.!?…]$/.test(text) ? text : `${text}.`))
    .join(' ');

/** What can be done with a segment: pinned and moved when it is planned work or a planned revisit. */
export function isMovable(segment: SegmentView, bar: LessonBarView): boolean {
  return (
    bar.status === 'planned' &&
    (segment.kind === 'work' || segment.kind === 'revisit' || segment.kind === 'extension')
  );
}

/** Set aside when it is planned work of a unit. */
export const isSettable = (segment: SegmentView, bar: LessonBarView): boolean =>
  isMovable(segment, bar) && segment.courseUnit !== null && segment.activity !== null;
