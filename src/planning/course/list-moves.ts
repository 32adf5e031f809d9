// What moved from one plan to the next: rules [M…] of SPEC.md. Only what is still to come is compared, so a lesson that
// was taught as planned is no move; the frame of a lesson (settling in, recap, practice) never moves.

import { causeOfMove } from './cause-of-move.ts';
import type { CoursePlan, Move, MoveContext } from './course-plan.ts';
import { type Change, type Comparison, comparePlans, type PlacedSegment } from './plan-comparison.ts';

/**
 * The moves of work, extensions and revisits, with the cause of each, in the order of the days they were on. The same
 * work in the same lesson with the same planned minutes has not moved, whatever its place within the lesson or the
 * lesson's day.
 */
export function listMoves(before: CoursePlan, after: CoursePlan, context: MoveContext): readonly Move[] {
  const comparison = comparePlans(before, after, context);
  const changes = listChanges(comparison);
  const moves = changes.map((change): Move => {
    const segment = change.now?.segment ?? change.old?.segment;
    return {
      key: segment?.key ?? '',
      title: segment?.title ?? '',
      from: change.old === null ? null : { date: change.old.date, minutes: change.old.segment.planned },
      to: change.now === null ? null : { date: change.now.date, minutes: change.now.segment.planned },
      because: causeOfMove(change, changes, comparison),
    };
  });
  const dayOf = (move: Move) => move.from?.date ?? move.to?.date ?? '';
  return moves.sort((a, b) =>
    dayOf(a) !== dayOf(b) ? (dayOf(a) < dayOf(b) ? -1 : 1) : a.key < b.key ? -1 : 1,
  );
}

function listChanges({ spent, coming, now, context }: Comparison): readonly Change[] {
  const byKey = (list: readonly PlacedSegment[]) => new Map(list.map((p) => [p.segment.key, p]));
  const spentByKey = byKey(spent);
  const comingByKey = byKey(coming);
  const nowByKey = byKey(now);
  const revisited = new Set(context.taught.flatMap((lesson) => lesson.revisited));
  const changes: Change[] = [];
  for (const [key, placed] of nowByKey) {
    // What a taught lesson did not reach keeps its key; a revisit that was held there is a new one when it comes again.
    const unreached = spentByKey.get(key) ?? null;
    const held = placed.segment.skill !== null && revisited.has(placed.segment.skill);
    const old = comingByKey.get(key) ?? (held ? null : unreached);
    if (old?.lesson === placed.lesson && old.segment.planned === placed.segment.planned) continue;
    changes.push({ old, now: placed });
  }
  for (const [key, old] of comingByKey) if (!nowByKey.has(key)) changes.push({ old, now: null });
  return changes;
}
