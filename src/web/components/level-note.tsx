// A level drawn as a notehead that fills in: 0 a dotted ring, 1 outlined, 2 half filled, 3 filled, 4 filled with a stem.

import type { Level } from '#planning';
import { words } from '../words/index.ts';

export interface LevelNoteProps {
  /** Null when no level was recorded: a short line stands in its place. */
  readonly level: Level | null;
  /** Height of the notehead's box in px. */
  readonly size?: number;
  /** Left out of the accessibility tree where the level stands beside it in words. */
  readonly decorative?: boolean;
}

// A notehead is an ellipse leaning up to the right, as engraved.
const lean = 'rotate(-24 12 22)';

export function LevelNote({ level, size = 24, decorative = false }: LevelNoteProps) {
  const name = level === null ? words.levelWords.unknown : `${level}, ${words.levels[level].name}`;
  const shape = { cx: 12, cy: 22, rx: 7.6, ry: 5.6, transform: lean } as const;
  return (
    <svg
      className="level-note"
      viewBox="0 0 24 32"
      width={(size * 24) / 32}
      height={size}
      role="img"
      aria-label={name}
      aria-hidden={decorative}
    >
      {level === null ? (
        <line x1="7" x2="17" y1="22" y2="22" stroke="currentColor" strokeWidth="1.6" />
      ) : (
        <>
          {level === 2 && <path d="M4.4 22a7.6 5.6 0 0 0 15.2 0z" transform={lean} fill="currentColor" />}
          <ellipse
            {...shape}
            fill={level >= 3 ? 'currentColor' : 'none'}
            stroke="currentColor"
            strokeWidth={level === 0 ? 1.7 : 2}
            strokeLinecap="round"
            strokeDasharray={level === 0 ? '0.1 3.7' : undefined}
          />
          {level === 4 && <line x1="18.9" x2="18.9" y1="19" y2="2" stroke="currentColor" strokeWidth="2" />}
        </>
      )}
    </svg>
  );
}
