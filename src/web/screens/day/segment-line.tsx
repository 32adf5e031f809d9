// A lesson as one thin line of time: each segment as long as its minutes, in its strand's ink and texture, revisits
// hollow, the frame of the lesson a hairline. The list beneath says the same in words.

import type { DayLesson } from '#contract';
import { inkOf } from '../../components/ink.ts';
import './segment-line.css';

export interface SegmentLineProps {
  readonly segments: DayLesson['segments'];
  readonly minutes: number;
  /** Minutes since the lesson began, while it is now. */
  readonly minute: number | null;
}

export function SegmentLine({ segments, minutes, minute }: SegmentLineProps) {
  let start = 0;
  const placed = segments.map((segment) => {
    const at = { segment, start };
    start += segment.minutes;
    return at;
  });
  return (
    <div className="segment-line" aria-hidden="true">
      {placed.map(({ segment, start }) => (
        <span key={start} className="segment-line-part" style={{ flexGrow: segment.minutes }}>
          <SegmentMark segment={segment} />
        </span>
      ))}
      {minute !== null && (
        <span className="segment-line-now" style={{ insetInlineStart: `${(100 * minute) / minutes}%` }} />
      )}
    </div>
  );
}

/** One segment's block, filling the box it is put in. */
export function SegmentMark({
  segment,
}: {
  readonly segment: Pick<DayLesson['segments'][number], 'kind' | 'ink'>;
}) {
  const { kind, ink } = segment;
  const framing = kind === 'settlingIn' || kind === 'practice' || kind === 'recap' || kind === 'open';
  if (framing || (ink === null && kind !== 'revisit'))
    return (
      <svg className="segment-mark" focusable="false" aria-hidden="true">
        <line
          x1="0"
          x2="100%"
          y1="50%"
          y2="50%"
          stroke="var(--line)"
          strokeWidth={kind === 'recap' ? 5 : 1.5}
          strokeDasharray={kind === 'open' ? '2 4' : undefined}
        />
      </svg>
    );
  // A revisit may belong to no strand: it is hollow all the same.
  const { line, texture } = ink === null ? { line: 'var(--ink-soft)', texture: '' } : inkOf(ink);
  return (
    <svg className="segment-mark" focusable="false" aria-hidden="true">
      <rect
        x="0.75"
        y="0.75"
        style={{ width: 'calc(100% - 1.5px)', height: 'calc(100% - 1.5px)' }}
        fill={kind === 'revisit' ? 'none' : `url(#${texture})`}
        stroke={line}
        strokeWidth="1.5"
        strokeDasharray={kind === 'extension' ? '4 3' : undefined}
      />
    </svg>
  );
}
