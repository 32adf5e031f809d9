// The four textures as SVG patterns, once per page; fill with `url(#strand-texture-1)`.

import type { InkIndex } from '#contract';
import { inkOf } from './ink.ts';

const marks = {
  plain: null,
  hatched: <path d="M0 8 8 0M-2 2 2-2M6 10 10 6" strokeWidth="1" />,
  dotted: <circle cx="4" cy="4" r="0.95" strokeWidth="0" />,
  ruled: <path d="M0 4H8" strokeWidth="0.9" />,
} as const;

const all: readonly InkIndex[] = [0, 1, 2, 3];

export function InkTextures() {
  return (
    <svg width="0" height="0" className="ink-textures" aria-hidden="true" focusable="false">
      <defs>
        {all.map((index) => {
          const ink = inkOf(index);
          return (
            <pattern key={index} id={ink.texture} width="8" height="8" patternUnits="userSpaceOnUse">
              <rect width="8" height="8" fill={ink.wash} />
              <g stroke={ink.line} fill={ink.line} opacity="0.45">
                {marks[ink.textureName]}
              </g>
            </pattern>
          );
        })}
      </defs>
    </svg>
  );
}
