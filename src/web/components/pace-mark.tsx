// Pace as a mark on a short line from 60 to 160 per cent with 100 ruled, and its interval where it is known.

export interface PaceMarkProps {
  readonly percent: number;
  readonly low?: number;
  readonly high?: number;
}

const left = 60;
const right = 160;
const place = (percent: number) =>
  2 + ((Math.min(right, Math.max(left, percent)) - left) / (right - left)) * 76;

/** A drawing only: the number stands beside it in words. */
export function PaceMark({ percent, low, high }: PaceMarkProps) {
  return (
    <svg className="pace-mark" viewBox="0 0 80 16" width="80" height="16" aria-hidden="true">
      <line x1="2" x2="78" y1="8" y2="8" stroke="var(--hairline)" />
      <line x1={place(100)} x2={place(100)} y1="2" y2="14" stroke="var(--line)" />
      {low !== undefined && high !== undefined && (
        <line x1={place(low)} x2={place(high)} y1="8" y2="8" stroke="var(--ink-soft)" strokeWidth="2.5" />
      )}
      <ellipse
        cx={place(percent)}
        cy="8"
        rx="4.4"
        ry="3.2"
        transform={`rotate(-24 ${place(percent)} 8)`}
        fill="var(--ink)"
      />
    </svg>
  );
}
