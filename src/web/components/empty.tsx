// An empty page teaches: one sentence of what belongs here, and the one action.

import type { ReactNode } from 'react';
import './empty.css';

export interface EmptyProps {
  readonly sentence: ReactNode;
  /** A Button or ButtonLink. */
  readonly action?: ReactNode;
}

export function Empty({ sentence, action }: EmptyProps) {
  return (
    <div className="empty">
      <svg className="empty-staff" viewBox="0 0 240 40" aria-hidden="true">
        {[4, 12, 20, 28, 36].map((y) => (
          <line key={y} x1="0" x2="240" y1={y} y2={y} />
        ))}
        <rect x="112" y="12" width="16" height="5" />
      </svg>
      <p className="empty-sentence">{sentence}</p>
      {action && <div className="empty-action">{action}</div>}
    </div>
  );
}
