// What is sent when a lesson is closed: the log of every segment that differs from what is on record, the practice if
// none was written yet, and the closing itself, in this order.

import type { LessonView } from '#contract';
import type { OutboxCommand } from '../../app/outbox-queue.ts';
import type { Proposal } from './close-proposals.ts';
import { mostSeconds } from './lesson-clock.ts';

export interface Closing {
  /** One for each segment, as proposed or as changed by the teacher. */
  readonly settled: readonly Proposal[];
  /** Seconds on each segment's clock, by segment id. */
  readonly secondsById: ReadonlyMap<string, number>;
  /** Practice that stands in the field as a suggestion, to be set as it stands; null when the teacher wrote some. */
  readonly suggestedPractice: string | null;
  /** How long the lesson really lasted, or null for as long as planned. */
  readonly lasted: number | null;
}

/**
 * Seconds to log: the clock's own where they agree with the minutes shown, so that nothing is rounded away; none where
 * nothing was measured (0 takes back a clock that was only touched); else the minutes put by hand.
 */
function secondsToLog({ timed, minutes }: Proposal, clock: number): number | null {
  if (timed === 'planned') return clock > 0 ? 0 : null;
  if (timed === 'clock' || Math.round(clock / 60) === minutes)
    return clock > 0 ? Math.min(mostSeconds, Math.floor(clock)) : null;
  return Math.min(mostSeconds, minutes * 60);
}

export function closeCommands(
  lesson: Pick<LessonView, 'id' | 'segments'>,
  closing: Closing,
): readonly OutboxCommand[] {
  const logs = closing.settled.flatMap((settled): readonly OutboxCommand[] => {
    const segment = lesson.segments.find((s) => s.id === settled.segment);
    if (!segment) return [];
    const seconds = secondsToLog(settled, closing.secondsById.get(segment.id) ?? segment.seconds ?? 0);
    const same =
      segment.outcome === settled.outcome &&
      (seconds === null || segment.seconds === seconds) &&
      (settled.outcome !== 'partly' || settled.because === 'recorded');
    if (same) return [];
    const { outcome, share } = settled;
    return [{ type: 'segment.log', segment: segment.id, seconds, outcome, share }];
  });
  const practice: readonly OutboxCommand[] =
    closing.suggestedPractice === null || closing.suggestedPractice.trim() === ''
      ? []
      : [
          {
            type: 'lesson.write',
            lesson: lesson.id,
            field: 'practice',
            base: '',
            text: closing.suggestedPractice,
          },
        ];
  return [...logs, ...practice, { type: 'lesson.close', lesson: lesson.id, minutes: closing.lasted }];
}
