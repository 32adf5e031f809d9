// The textures of taught work: a strand's ink with its texture left open in the colour of the paper. Planned work wears the
// page's own `InkTextures`.

import type { InkIndex } from '#contract';
import { inkOf } from '../components/ink.ts';

const inks: readonly InkIndex[] = [0, 1, 2, 3];

const marks = {
  plain: null,
  hatched: <path d="M0 8 8 0M-2 2 2-2M6 10 10 6" strokeWidth="1.3" />,
  dotted: <circle cx="4" cy="4" r="1.35" strokeWidth="0" />,
  ruled: <path d="M0 4H8" strokeWidth="1.3" />,
} as const;

/** The paint that fills a block of this ink. */
export const textureOf = (ink: InkIndex, taught: boolean): string =>
  taught ? `url(#score-taught-${ink})` : `url(#${inkOf(ink).texture})`;

/** Put once on a page, before the systems. */
export function ScoreTextures() {
  return (
    <svg className="score-textures" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        {inks.map((index) => {
          const ink = inkOf(index);
          return (
            <pattern
              key={index}
              id={`score-taught-${index}`}
              width="8"
              height="8"
              patternUnits="userSpaceOnUse"
            >
              <rect width="8" height="8" fill={ink.line} />
              <g className="texture-marks">{marks[ink.textureName]}</g>
            </pattern>
          );
        })}
      </defs>
    </svg>
  );
}
