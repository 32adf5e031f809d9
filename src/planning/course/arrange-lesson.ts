// The order of one lesson and its minutes: rules [A…] of SPEC.md. Settling in, recap, revisits, new or hard work while
// fresh with strands alternating, something easy or musical last, extension, setting practice; minutes add up exactly.

import { present } from '#core';
import type { PlannedSegment } from './course-plan.ts';
import { segmentTitles } from './course-wording.ts';
import type { LessonFrame } from './lesson-frame.ts';

/** A segment before it has its place: its start and its minutes on the clock follow. */
export type UnplacedSegment = Omit<PlannedSegment, 'start' | 'minutes'>;

/** A piece of work and what its place in the lesson depends on. */
export interface UnplacedWork {
  readonly segment: UnplacedSegment;
  readonly id: string;
  readonly character: 'new' | 'hard' | 'easy' | 'musical';
  /** Ids that must come before it when they are in the same lesson. */
  readonly preds: readonly string[];
  /** Place in the order of the whole course. */
  readonly order: number;
}

/** Spare minutes from here on are shown as open time. Our own choice. */
const leastOpen = 2;

/** What a part of the frame may grow to: half as long again. More settling in would not be believed. Our own choice. */
const roomFor = (planned: number): number => planned + Math.ceil(planned / 2);

/** Lays out one lesson; its minutes add up to the lesson's length and none is negative. */
export function arrangeLesson(
  frame: LessonFrame,
  revisits: readonly UnplacedSegment[],
  work: readonly UnplacedWork[],
): readonly PlannedSegment[] {
  const ordered = orderWork(work);
  const parts: UnplacedSegment[] = [
    framePart(frame, 'settlingIn', frame.settlingIn),
    framePart(frame, 'recap', frame.recap),
    ...revisits,
    ...ordered.filter((w) => w.segment.kind === 'work').map((w) => w.segment),
    ...ordered.filter((w) => w.segment.kind === 'extension').map((w) => w.segment),
    framePart(frame, 'open', 0),
    framePart(frame, 'practice', frame.practice),
  ];
  const minutes = shareOut(parts, frame.lesson.minutes);
  let start = 0;
  return parts.flatMap((part, at) => {
    const own = present(minutes[at], 'minutes of every part');
    if (own === 0) return [];
    const segment = { ...part, start, minutes: own };
    start += own;
    return [segment];
  });
}

function framePart(
  frame: LessonFrame,
  kind: 'settlingIn' | 'recap' | 'open' | 'practice',
  planned: number,
): UnplacedSegment {
  return {
    key: `${kind}:${frame.lesson.id}`,
    kind,
    strand: null,
    courseUnit: null,
    activity: null,
    skill: null,
    title: segmentTitles[kind],
    planned,
    completes: false,
    pinned: false,
    reasons: [],
  };
}

const freshness = { new: 0, hard: 0, easy: 1, musical: 2 } as const;

/** Again and again the freshest work whose needs are met, from another strand than the one before where there is a choice. */
function orderWork(work: readonly UnplacedWork[]): readonly UnplacedWork[] {
  const left = [...work];
  const ordered: UnplacedWork[] = [];
  while (left.length > 0) {
    const waitingIds = new Set(left.map((w) => w.id));
    const free = left.filter((w) => !w.preds.some((id) => id !== w.id && waitingIds.has(id)));
    const lastStrand = ordered.at(-1)?.segment.strand ?? null;
    const rank = (w: UnplacedWork) =>
      freshness[w.character] * 2 + (lastStrand !== null && w.segment.strand === lastStrand ? 1 : 0);
    const next = (free.length > 0 ? free : left).reduce((best, w) =>
      rank(w) < rank(best) || (rank(w) === rank(best) && w.order < best.order) ? w : best,
    );
    left.splice(left.indexOf(next), 1);
    ordered.push(next);
  }
  return ordered;
}

/**
 * Clock minutes for each part. Work and revisits get what the plan expects of them and no more: a longer slot is a slower
 * lesson, and would teach the pace to be slow. What the plan leaves over goes to recap, settling in and setting practice,
 * a minute in turn, up to half as long again; two minutes or more beyond that are open time.
 */
function shareOut(parts: readonly UnplacedSegment[], length: number): readonly number[] {
  const minutes = parts.map((part) => part.planned);
  let spare = length - minutes.reduce((sum, m) => sum + m, 0);
  const indexOf = (kind: PlannedSegment['kind']) => parts.findIndex((part) => part.kind === kind);
  const give = (index: number, amount: number) => {
    minutes[index] = (minutes[index] ?? 0) + amount;
    spare -= amount;
  };
  const frame = [indexOf('recap'), indexOf('settlingIn'), indexOf('practice')].filter(
    (at) => (parts[at]?.planned ?? 0) > 0,
  );
  let given = true;
  while (spare > 0 && given) {
    given = false;
    for (const at of frame)
      if (spare > 0 && (minutes[at] ?? 0) < roomFor(parts[at]?.planned ?? 0)) {
        give(at, 1);
        given = true;
      }
  }
  const open = indexOf('open');
  give(spare >= leastOpen ? open : (frame[0] ?? open), spare);
  return minutes;
}
