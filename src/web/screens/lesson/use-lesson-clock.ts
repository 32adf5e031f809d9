import { useCallback, useEffect, useRef, useState } from 'react';
import type { LessonView } from '#contract';
import {
  joinLogged,
  type LessonClock,
  pauseClock,
  readClock,
  type SegmentId,
  secondsOf,
  setClock,
  startClock,
  stoppedClock,
  writeClock,
} from './lesson-clock.ts';

export interface LessonClockHand {
  readonly running: SegmentId | null;
  readonly seconds: (segment: SegmentId) => number;
  readonly start: (segment: SegmentId) => void;
  readonly pause: () => void;
  readonly set: (segment: SegmentId, seconds: number) => void;
  /** The lesson is closed: from here on the studio's record stands, not this browser's clock. */
  readonly forget: () => void;
}

const storageKey = (lesson: string) => `levare-clock ${lesson}`;

function load(lesson: string): LessonClock {
  try {
    return readClock(localStorage.getItem(storageKey(lesson)));
  } catch {
    return readClock(null);
  }
}

/**
 * The clock of a lesson, kept in this browser by instants and logged through `log` whenever a segment stops, the page
 * is left, or half a minute has passed.
 */
export function useLessonClock(
  id: string,
  lesson: LessonView | undefined,
  log: (segment: SegmentId, seconds: number) => void,
): LessonClockHand {
  const [clock, setShown] = useState(() => load(id));
  const [now, setNow] = useState(() => Date.now());
  const held = useRef(clock);
  const logNow = useRef(log);
  logNow.current = log;

  const put = useCallback(
    (next: LessonClock) => {
      if (next === held.current) return;
      held.current = next;
      try {
        localStorage.setItem(storageKey(id), writeClock(next));
      } catch {
        // Kept on this page only; the log goes out all the same.
      }
      setNow(Date.now());
      setShown(next);
    },
    [id],
  );

  const tell = useCallback((segment: SegmentId | undefined) => {
    if (!segment) return;
    const seconds = secondsOf(held.current, segment, Date.now());
    if (seconds === 0) return;
    logNow.current(segment, seconds);
  }, []);

  useEffect(() => {
    if (lesson) put(joinLogged(held.current, lesson.segments));
  }, [lesson, put]);

  // Another window of this browser has the same clock.
  useEffect(() => {
    const hear = (event: StorageEvent) => {
      if (event.key !== storageKey(id)) return;
      held.current = readClock(event.newValue);
      setShown(held.current);
    };
    window.addEventListener('storage', hear);
    return () => window.removeEventListener('storage', hear);
  }, [id]);

  const running = clock.running?.segment ?? null;
  useEffect(() => {
    if (!running) return;
    const tick = window.setInterval(() => setNow(Date.now()), 1000);
    const keep = window.setInterval(() => tell(running), 30_000);
    const leave = () => tell(running);
    const look = () => (document.visibilityState === 'hidden' ? leave() : setNow(Date.now()));
    window.addEventListener('pagehide', leave);
    document.addEventListener('visibilitychange', look);
    return () => {
      window.clearInterval(tick);
      window.clearInterval(keep);
      window.removeEventListener('pagehide', leave);
      document.removeEventListener('visibilitychange', look);
    };
  }, [running, tell]);

  return {
    running,
    seconds: (segment) => secondsOf(clock, segment, now),
    start(segment) {
      const before = held.current.running?.segment;
      put(startClock(held.current, segment, Date.now()));
      if (before !== segment) tell(before);
    },
    pause() {
      const before = held.current.running?.segment;
      put(pauseClock(held.current, Date.now()));
      tell(before);
    },
    set(segment, seconds) {
      put(setClock(held.current, segment, seconds, Date.now()));
      logNow.current(segment, seconds);
    },
    forget() {
      held.current = stoppedClock;
      setShown(stoppedClock);
      try {
        localStorage.removeItem(storageKey(id));
      } catch {
        // Nothing was kept.
      }
    },
  };
}
