import type { InkIndex } from '#contract';
import { inkOf } from '../components/ink.ts';
import { type Box, texturePath } from './texture-path.ts';

interface Props {
  readonly ink: InkIndex;
  readonly taught: boolean;
  readonly box: Box;
  /** Of the outline. */
  readonly className?: string;
}

/**
 * A block of a strand: its outline in the strand's ink and its texture inside. Taught, it is filled with the ink and the
 * texture left open in the colour of the paper; planned, the texture is drawn on the strand's wash.
 */
export function TexturedBeam({ ink, taught, box, className = '' }: Props) {
  const { line, wash, textureName } = inkOf(ink);
  const marks = texturePath(textureName, box, taught ? 1.35 : 0.95);
  const colour = taught ? 'var(--paper)' : line;
  return (
    <>
      <rect className={`beam ink-${ink} ${className}`} {...box} fill={taught ? line : wash} />
      {marks && (
        <path
          className="beam-texture"
          d={marks}
          {...(textureName === 'dotted' ? { fill: colour } : { stroke: colour, fill: 'none' })}
          strokeWidth={taught ? 1.3 : 1}
          opacity={taught ? 1 : 0.45}
        />
      )}
    </>
  );
}
