// The clock of a lesson: one segment runs at a time. It keeps instants, not ticks, so a reload, a closed lid or a
// throttled tab loses nothing; the time that runs is always reckoned from the instant it was started.

import type { Id } from '#core';

export type SegmentId = Id<'segment'>;

export interface LessonClock {
  /** Milliseconds each segment has had, the present run not counted. */
  readonly kept: Readonly<Record<string, number>>;
  /** The segment that runs, since which instant (milliseconds of the epoch). */
  readonly running: { readonly segment: SegmentId; readonly since: number } | null;
}

/** The most that is logged for one segment, as the contract allows: six hours. */
export const mostSeconds = 6 * 3600;

export const stoppedClock: LessonClock = { kept: {}, running: null };

/** Milliseconds a segment has had until `now`. A machine clock that was set back counts as no time, never as negative. */
export function elapsedOf(clock: LessonClock, segment: SegmentId, now: number): number {
  const run = clock.running?.segment === segment ? Math.max(0, now - clock.running.since) : 0;
  return (clock.kept[segment] ?? 0) + run;
}

/** Whole seconds as they are logged. */
export function secondsOf(clock: LessonClock, segment: SegmentId, now: number): number {
  return Math.min(mostSeconds, Math.floor(elapsedOf(clock, segment, now) / 1000));
}

/** Stops what runs and keeps its time. */
export function pauseClock(clock: LessonClock, now: number): LessonClock {
  if (!clock.running) return clock;
  const { segment } = clock.running;
  return { kept: { ...clock.kept, [segment]: elapsedOf(clock, segment, now) }, running: null };
}

/** Lets one segment run on from what it had; another that ran stops. */
export function startClock(clock: LessonClock, segment: SegmentId, now: number): LessonClock {
  if (clock.running?.segment === segment) return clock;
  return { kept: pauseClock(clock, now).kept, running: { segment, since: now } };
}

/** Puts a segment's time by hand; if it runs, it runs on from there. */
export function setClock(clock: LessonClock, segment: SegmentId, seconds: number, now: number): LessonClock {
  const kept = { ...clock.kept, [segment]: Math.max(0, seconds) * 1000 };
  return { kept, running: clock.running?.segment === segment ? { segment, since: now } : clock.running };
}

/**
 * Takes over what the studio has on record: another window or device may have logged more. A segment that runs here is
 * left alone, and less than what is here is ignored, because it may be on its way.
 */
export function joinLogged(
  clock: LessonClock,
  segments: readonly { readonly id: SegmentId; readonly seconds: number | null }[],
): LessonClock {
  const more = segments.filter(
    (s) => s.id !== clock.running?.segment && (s.seconds ?? 0) * 1000 >= (clock.kept[s.id] ?? 0) + 1000,
  );
  if (more.length === 0) return clock;
  const taken = Object.fromEntries(more.map((s) => [s.id, (s.seconds ?? 0) * 1000]));
  return { ...clock, kept: { ...clock.kept, ...taken } };
}

/**
 * Whether a clock was forgotten: more on one segment than the whole lesson has and half as long again as was planned.
 * Such a time is shown, and planned minutes are proposed in its place.
 */
export function isRunOn(seconds: number, plannedMinutes: number, lessonMinutes: number): boolean {
  return seconds > lessonMinutes * 60 && seconds > plannedMinutes * 90;
}

/** What the browser keeps, back into a clock; anything unreadable is a stopped clock. */
export function readClock(text: string | null): LessonClock {
  if (!text) return stoppedClock;
  try {
    const found: unknown = JSON.parse(text);
    if (typeof found !== 'object' || found === null || !('kept' in found)) return stoppedClock;
    const kept: Record<string, number> = {};
    if (typeof found.kept === 'object' && found.kept !== null)
      for (const [id, ms] of Object.entries(found.kept))
        if (typeof ms === 'number' && Number.isFinite(ms) && ms >= 0) kept[id] = ms;
    const run: unknown = 'running' in found ? found.running : null;
    if (typeof run !== 'object' || run === null || !('segment' in run) || !('since' in run))
      return { kept, running: null };
    if (typeof run.segment !== 'string' || typeof run.since !== 'number') return { kept, running: null };
    return { kept, running: { segment: run.segment as SegmentId, since: run.since } };
  } catch {
    return stoppedClock;
  }
}

export const writeClock = (clock: LessonClock): string => JSON.stringify(clock);

/** Minutes and seconds for a clock face. `formatClock(250)` → `4:10`; from an hour on `1:04:10`. */
export function formatClock(seconds: number): string {
  const two = (n: number) => String(n).padStart(2, '0');
  const whole = Math.max(0, Math.floor(seconds));
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${minutes}:${two(whole % 60)}`;
}
