import { memo } from 'react';
import { words } from '../words/index.ts';
import { fitTitle, type Measure } from './fit-title.ts';
import { metrics, type ScoreBarline, type ScoreSystem } from './layout.ts';
import { BarHead } from './score-bar.tsx';
import { Block } from './score-block.tsx';

const say = words.score;

/** Where a segment being moved would land. */
export interface Landing {
  readonly bar: string;
  readonly row: number;
  readonly minutes: number;
  /** The segment under way. */
  readonly segment: string;
  /** It is still over the bar it came from: nothing would change. */
  readonly stays: boolean;
}

interface Props {
  readonly system: ScoreSystem;
  readonly measure: Measure;
  readonly nameOf: (id: string) => string;
  readonly focusId: string | null;
  readonly landing: Landing | null;
  readonly today: string;
}

/** One system of the score: names, staff lines, bars with their blocks, barlines, and *now*. */
export const System = memo(function System({ system, measure, nameOf, focusId, landing, today }: Props) {
  const top = system.numbersAt + 9;
  const bottom = system.datesAt - 14;
  return (
    <svg
      className="score-system"
      viewBox={`0 0 ${system.width} ${system.height}`}
      width={system.width}
      height={system.height}
      focusable="false"
      role="presentation"
    >
      <StaffLines system={system} measure={measure} top={top} bottom={bottom} />
      {system.bars.map((bar) => (
        <BarHead
          key={bar.id}
          bar={bar}
          system={system}
          measure={measure}
          name={nameOf(bar.id)}
          tabbable={focusId === bar.id}
          landing={landing?.bar === bar.id && !landing.stays}
          isToday={bar.source.kind === 'lesson' && bar.source.date === today}
        />
      ))}
      {system.barlines.map((barline) => (
        <Barline
          key={barline.x}
          barline={barline}
          system={system}
          measure={measure}
          top={top}
          bottom={bottom}
        />
      ))}
      {system.deadlines.map((deadline) => {
        const y = system.rows[deadline.row]?.y ?? 0;
        return (
          <path
            key={deadline.row}
            className="deadline"
            d={`M${deadline.x - 5} ${y - 9}v18M${deadline.x - 10} ${y - 5}l4 5l-4 5z`}
          />
        );
      })}
      {system.now !== null && <NowLine x={system.now} system={system} />}
      {system.bars.flatMap((bar) =>
        bar.blocks.map((block) => {
          const row = system.rows[block.row];
          return row ? (
            <Block
              key={block.segment.id}
              block={block}
              row={row}
              name={nameOf(block.segment.id)}
              tabbable={focusId === block.segment.id}
              lifted={landing?.segment === block.segment.id}
            />
          ) : null;
        }),
      )}
      {landing && !landing.stays && <LandingPlace landing={landing} system={system} />}
    </svg>
  );
});

/** Names of strands are set in the serif face: measured, no name of an area is wider than this share of it in the sans. */
const serifWidth = 0.77;

function StaffLines({
  system,
  measure,
  top,
  bottom,
}: {
  readonly system: ScoreSystem;
  readonly measure: Measure;
  readonly top: number;
  readonly bottom: number;
}) {
  const size = system.left < 100 ? 14 : 18;
  return (
    <g className="staff">
      {system.rows.map((row) => {
        const name = row.strand
          ? fitTitle(row.name, system.left - 17, 2, size * serifWidth, measure, 3)
          : null;
        return (
          <g key={row.strand ?? 'shared'}>
            <line
              className={row.strand ? 'staff-line' : 'staff-line thin'}
              x1={system.left}
              x2={system.right}
              y1={row.y}
              y2={row.y}
            />
            {name && (
              <text className="strand-name" fontSize={size} textAnchor="end">
                {name.lines.map((line, i) => (
                  <tspan
                    key={line}
                    x={system.left - 16}
                    y={row.y + size * 0.3 + (i - (name.lines.length - 1) / 2) * size}
                  >
                    {line}
                  </tspan>
                ))}
              </text>
            )}
          </g>
        );
      })}
      <line className="opening" x1={system.left} x2={system.left} y1={top} y2={bottom} />
      <path className="bracket" d={`M${system.left - 2} ${top - 4}q-4 1 -5 4V${bottom}q1 3 5 4`} />
    </g>
  );
}

function Barline({
  barline,
  system,
  measure,
  top,
  bottom,
}: {
  readonly barline: ScoreBarline;
  readonly system: ScoreSystem;
  readonly measure: Measure;
  readonly top: number;
  readonly bottom: number;
}) {
  const { x, kind, events } = barline;
  const titles = events.map((event) => event.title).join(' · ');
  const toLeft = x - system.left > 110;
  const title = titles
    ? fitTitle(titles, toLeft ? x - system.left - 8 : system.width - x - 8, 1, 15, measure)
    : null;
  return (
    <g className={`barline ${kind}`}>
      {kind === 'single' && <line x1={x} x2={x} y1={top} y2={bottom} />}
      {kind === 'final' && (
        <>
          <line x1={x - 6} x2={x - 6} y1={top} y2={bottom} />
          <rect x={x - 3} y={top} width="3.5" height={bottom - top} />
        </>
      )}
      {kind === 'event' && <rect x={x - 2} y={top - 16} width="4" height={bottom - top + 16} />}
      {title && (
        <text
          className="event-title"
          x={toLeft ? x + 2 : x - 2}
          y={system.numbersAt - metrics.tier - 1}
          textAnchor={toLeft ? 'end' : 'start'}
        >
          {title.lines[0]}
        </text>
      )}
    </g>
  );
}

function NowLine({ x: at, system }: { readonly x: number; readonly system: ScoreSystem }) {
  const high = system.numbersAt - metrics.tier;
  const atEvent = system.barlines.some((barline) => barline.kind === 'event' && Math.abs(barline.x - at) < 1);
  const atEdge = at > system.width - 40;
  // Beside a heavy barline, whose title stands where the word would.
  const x = atEvent ? at + 5 : at;
  return (
    <g className="now">
      <line className="now-line" x1={x} x2={x} y1={high + 3} y2={system.datesAt - 10} />
      {!atEvent && (
        <text x={atEdge ? x - 5 : x} y={high - 1} textAnchor={atEdge ? 'end' : 'middle'}>
          {say.now}
        </text>
      )}
    </g>
  );
}

/** The ghost of a block in the bar it would go to. */
function LandingPlace({ landing, system }: { readonly landing: Landing; readonly system: ScoreSystem }) {
  const bar = system.bars.find((one) => one.id === landing.bar);
  const row = system.rows[landing.row];
  if (!bar || !row) return null;
  const inner = bar.width - metrics.padLeft - metrics.padRight;
  const span = bar.source.kind === 'lesson' ? bar.source.minutes : 1;
  const width = Math.min(inner, (inner * landing.minutes) / Math.max(1, span));
  const after = bar.blocks.filter((block) => block.row === landing.row).at(-1);
  const from = after ? after.x + after.width + 2 : bar.x + metrics.padLeft;
  const x = Math.min(from, bar.x + bar.width - metrics.padRight - width);
  return <rect className="landing-place" x={x} y={row.y - 9} width={width} height="18" />;
}
