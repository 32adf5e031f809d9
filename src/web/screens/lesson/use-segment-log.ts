import { useCallback, useRef, useState } from 'react';
import type { LessonView } from '#contract';
import type { SegmentId } from './lesson-clock.ts';
import { logCommand, readShares, type SegmentSaid, saidOf, sayMore } from './segment-log.ts';
import type { LessonDesk } from './use-lesson-desk.ts';

const storageKey = (lesson: string) => `levare-shares ${lesson}`;

function loadShares(lesson: string): ReadonlyMap<string, number> {
  try {
    return readShares(localStorage.getItem(storageKey(lesson)));
  } catch {
    return new Map();
  }
}

export interface SegmentLog {
  readonly say: (segment: SegmentId, more: Partial<SegmentSaid>) => void;
  /** Shares said by hand on this browser. */
  readonly shareById: ReadonlyMap<string, number>;
}

/** Logs segments of a lesson, each time in full. */
export function useSegmentLog(
  id: string,
  lesson: LessonView | undefined,
  post: LessonDesk['post'],
): SegmentLog {
  const [shareById, setShares] = useState(() => loadShares(id));
  const shares = useRef(shareById);
  const view = useRef(lesson);
  view.current = lesson;
  /** What was said since the view was last drawn: a second log in the same breath must not forget the first. */
  const fresh = useRef(new Map<string, SegmentSaid>());
  const drawn = useRef(lesson);
  if (drawn.current !== lesson) {
    drawn.current = lesson;
    fresh.current.clear();
  }
  const say = useCallback(
    (segment: SegmentId, more: Partial<SegmentSaid>) => {
      const shown = view.current?.segments.find((s) => s.id === segment);
      const before = fresh.current.get(segment) ??
        (shown && { ...saidOf(shown), share: shares.current.get(segment) ?? null }) ?? {
          seconds: null,
          outcome: null,
          share: null,
        };
      const { said, isNew } = sayMore(before, more);
      if (!isNew) return;
      fresh.current.set(segment, said);
      const next = new Map(shares.current);
      if (said.share === null) next.delete(segment);
      else next.set(segment, said.share);
      shares.current = next;
      setShares(next);
      try {
        localStorage.setItem(storageKey(id), JSON.stringify(Object.fromEntries(next)));
      } catch {
        // Remembered on this page; the studio has the log.
      }
      post(logCommand(segment, said));
    },
    [id, post],
  );
  return { say, shareById };
}
