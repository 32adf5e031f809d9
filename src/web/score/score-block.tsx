import { metrics, type ScoreBlock, type ScoreRow } from './layout.ts';
import { TexturedBeam } from './textured-beam.tsx';

interface Props {
  readonly block: ScoreBlock;
  readonly row: ScoreRow;
  readonly name: string;
  readonly tabbable: boolean;
  readonly lifted: boolean;
}

/** One segment on its line: a beam with its title above and its marks below. */
export function Block({ block, row, name, tabbable, lifted }: Props) {
  const { segment, x, width, label, taught } = block;
  const shared = row.strand === null;
  const height = shared ? metrics.sharedBeam : metrics.beam;
  const size = shared ? metrics.sharedSize : metrics.labelSize;
  const line = shared ? 0 : metrics.labelLine;
  const top = row.y - height / 2;
  const lastBaseline = top - (shared ? 4 : 6);
  const classes = ['block', segment.kind, taught ? 'taught' : 'planned', segment.outcome ?? ''];
  if (lifted) classes.push('lifted');
  if (shared) classes.push('shared');
  const labelLeft = label ? (label.anchor === 'start' ? label.x : label.x - label.width) : x;
  const hitLeft = Math.min(x, labelLeft);
  const hitRight = Math.max(x + width, label ? labelLeft + label.width : x);
  return (
    <g className={classes.filter(Boolean).join(' ')} data-glide={taught ? undefined : segment.key}>
      {/* biome-ignore lint/a11y/useSemanticElements: a button element cannot stand in a drawing */}
      <g role="button" tabIndex={tabbable ? 0 : -1} aria-label={name} className="handle" data-id={segment.id}>
        <rect
          className="hit"
          x={hitLeft}
          y={row.top + 2}
          width={hitRight - hitLeft}
          height={row.bottom - row.top - 4}
        />
        <rect
          className="ring"
          x={hitLeft - 3}
          y={row.top + 3}
          width={hitRight - hitLeft + 6}
          height={row.bottom - row.top - 4}
          rx="2"
        />
        <Beam block={block} row={row} top={top} height={height} />
        {segment.pinned && (
          <path className="pin" d={`M${x + 1} ${row.y + 9}l3.5 6.5h-7z`} transform="translate(3 0)" />
        )}
        {segment.moved && (
          <path
            className="tie"
            d={tie(
              x + (segment.pinned ? 11 : 1),
              x + Math.max(width - (segment.endsUnit ? 9 : 0), segment.pinned ? 24 : 14) - 1,
              row.y + height / 2 + 3,
            )}
          />
        )}
        {segment.endsUnit && <CheckMark x={x + width} y={row.y + 8} />}
        {segment.outcome === 'setAside' && <Caesura x={x + width} y={row.y} />}
      </g>
      {label && (
        <text className="label" textAnchor={label.anchor} fontSize={size}>
          {label.lines.map((text, i) => (
            <tspan key={text} x={label.x} y={lastBaseline - (label.lines.length - 1 - i) * line}>
              {text}
            </tspan>
          ))}
        </text>
      )}
    </g>
  );
}

function Beam({
  block,
  row,
  top,
  height,
}: {
  readonly block: ScoreBlock;
  readonly row: ScoreRow;
  readonly top: number;
  readonly height: number;
}) {
  const { segment, x, width, taught } = block;
  if (segment.kind === 'open') {
    // A rest hangs from the line, in the middle of the time left open.
    return <rect className="open-rest" x={x + width / 2 - 5} y={row.y} width="10" height="4" />;
  }
  const ink = row.ink;
  if (ink === null && segment.kind === 'revisit') {
    return (
      <rect
        className="beam hollow"
        x={x + 0.75}
        y={row.y - 4}
        width={Math.max(1, width - 1.5)}
        height="8"
        rx="4"
      />
    );
  }
  if (ink === null) {
    return <rect className="beam quiet" x={x} y={top} width={width} height={height} />;
  }
  if (segment.kind === 'revisit') {
    return (
      <rect
        className={`beam hollow ink-${ink}`}
        x={x + 0.75}
        y={top + 0.75}
        width={Math.max(1, width - 1.5)}
        height={height - 1.5}
        rx={height / 2}
      />
    );
  }
  return (
    <TexturedBeam
      ink={ink}
      taught={taught}
      box={{ x: x + 0.5, y: top + 0.5, width: Math.max(1, width - 1), height: height - 1 }}
    />
  );
}

/** The check at the end of a unit. */
export function CheckMark({ x, y }: { readonly x: number; readonly y: number }) {
  return <path className="check" d={`M${x - 9} ${y + 3}l3.2 3.6l6-8.6`} />;
}

/** Two strokes, as over a staff where the music stops. */
export function Caesura({ x, y }: { readonly x: number; readonly y: number }) {
  return <path className="caesura" d={`M${x - 4} ${y + 9}l5 -18M${x + 1} ${y + 9}l5 -18`} />;
}

/** A tie from one x to another, hanging below y; thicker in the middle, as engraved. */
export function tie(from: number, to: number, y: number): string {
  const deep = Math.min(9, 4 + (to - from) * 0.06);
  const a = from + (to - from) * 0.25;
  const b = to - (to - from) * 0.25;
  return `M${from} ${y}C${a} ${y + deep} ${b} ${y + deep} ${to} ${y}C${b} ${y + deep - 2} ${a} ${y + deep - 2} ${from} ${y}Z`;
}
