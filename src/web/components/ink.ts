// A strand's ink: its colour, the wash behind words, and the texture that says the same without colour.

import type { InkIndex } from '#contract';

export interface Ink {
  /** CSS colour for lines, outlines and text. */
  readonly line: string;
  /** CSS colour of a ground that text can stand on. */
  readonly wash: string;
  /** Id of the SVG pattern that `InkTextures` defines: plain, hatched, dotted or ruled. */
  readonly texture: string;
  readonly textureName: 'plain' | 'hatched' | 'dotted' | 'ruled';
}

const textureNames = ['plain', 'hatched', 'dotted', 'ruled'] as const;

/** `inkOf(1).line` → `var(--strand-1)` */
export function inkOf(ink: InkIndex): Ink {
  return {
    line: `var(--strand-${ink})`,
    wash: `var(--strand-${ink}-wash)`,
    texture: `strand-texture-${ink}`,
    textureName: textureNames[ink],
  };
}
