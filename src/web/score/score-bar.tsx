import { daysBetween } from '#core';
import { words } from '../words/index.ts';
import { fitTitle, type Measure } from './fit-title.ts';
import { metrics, type ScoreBar, type ScoreSystem } from './layout.ts';
import { isGiven } from './timeline.ts';

const say = words.score;

interface Props {
  readonly bar: ScoreBar;
  readonly system: ScoreSystem;
  readonly name: string;
  readonly tabbable: boolean;
  readonly landing: boolean;
  readonly isToday: boolean;
  readonly measure: Measure;
}

/** The head of a bar: its number, its date, and what stands in it when it is no lesson to teach. */
export function BarHead({ bar, system, name, tabbable, landing, isToday, measure }: Props) {
  const { source, x, width } = bar;
  const top = system.numbersAt - 15;
  const staffTop = system.numbersAt + 9;
  const staffBottom = system.datesAt - 14;
  const classes = ['bar', source.kind === 'rest' ? 'rest' : source.status];
  if (landing) classes.push('landing');
  if (source.kind === 'lesson' && source.barred) classes.push('barred');
  return (
    <g className={classes.join(' ')}>
      {/* biome-ignore lint/a11y/useSemanticElements: a button element cannot stand in a drawing */}
      <g
        role="button"
        tabIndex={tabbable ? 0 : -1}
        aria-label={name}
        className="handle"
        data-id={bar.id}
        data-bar={bar.id}
      >
        <rect className="hit" x={x} y={top} width={width} height={system.height - top} />
        <rect className="ring" x={x + 2} y={top} width={width - 4} height={system.height - top - 2} rx="2" />
      </g>
      {source.kind === 'lesson' && source.number !== null && (
        <text className="number" x={x + 5} y={system.numbersAt}>
          {source.number}
        </text>
      )}
      {source.kind === 'lesson' && isGiven(source) && (
        <Without bar={bar} y={system.numbersAt} measure={measure} />
      )}
      <text
        className={isToday ? 'date today' : 'date'}
        x={x + (isNarrow(bar) ? width / 2 : metrics.padLeft)}
        textAnchor={isNarrow(bar) ? 'middle' : 'start'}
        y={system.datesAt}
      >
        {bar.dateText}
      </text>
      {source.kind === 'rest' && <BarOfRest bar={bar} system={system} measure={measure} />}
      {source.kind === 'lesson' && !isGiven(source) && (
        <>
          <rect className="gone" x={x} y={staffTop} width={width} height={staffBottom - staffTop} />
          <GoneReason bar={bar} top={staffTop} bottom={staffBottom} measure={measure} />
        </>
      )}
      {source.kind === 'lesson' && isGiven(source) && source.barred && (
        <text className="kept-free" x={x + width / 2} y={(staffTop + staffBottom) / 2} textAnchor="middle">
          {say.keptFree}
        </text>
      )}
    </g>
  );
}

/** Beside the number, who of a group was not there, as far as there is room for the words. */
function Without({
  bar,
  y,
  measure,
}: {
  readonly bar: ScoreBar;
  readonly y: number;
  readonly measure: Measure;
}) {
  if (bar.source.kind !== 'lesson' || bar.source.absent.length === 0) return null;
  const room = bar.width - 34;
  const fitted =
    fitTitle(words.lesson.away.without(bar.source.absent), room, 1, 11.5, measure) ??
    fitTitle(say.withoutSome(bar.source.absent.length), room, 1, 11.5, measure);
  if (fitted === null) return null;
  return (
    <text className="without" x={bar.x + bar.width - 6} y={y} textAnchor="end">
      {fitted.lines[0]}
    </text>
  );
}

const isNarrow = ({ source }: ScoreBar) => source.kind === 'rest' || !isGiven(source);

/** As a rest of many bars is engraved: a heavy stroke between two serifs, its length above, its name below. */
function BarOfRest({
  bar,
  system,
  measure,
}: {
  readonly bar: ScoreBar;
  readonly system: ScoreSystem;
  readonly measure: Measure;
}) {
  if (bar.source.kind !== 'rest') return null;
  const { from, to, name } = bar.source;
  const middle = bar.x + bar.width / 2;
  const half = Math.min(bar.width / 2 - 14, 44);
  const staff = system.rows.filter((row) => row.strand !== null);
  const y = staff[Math.floor((staff.length - 1) / 2)]?.y ?? system.rows[0]?.y ?? 0;
  const days = daysBetween(from, to) + 1;
  const title = fitTitle(name, bar.width - 10, 3, 12, measure);
  return (
    <g className="bar-of-rest">
      <text className="rest-length" x={middle} y={y - 13} textAnchor="middle">
        {days < 6 ? say.days(days) : say.weeks(Math.max(1, Math.round(days / 7)))}
      </text>
      <path d={`M${middle - half} ${y - 8}v16M${middle + half} ${y - 8}v16`} className="serifs" />
      <rect x={middle - half} y={y - 3.5} width={half * 2} height="7" className="stroke" />
      {title && (
        <text className="rest-name" textAnchor="middle">
          {title.lines.map((line, i) => (
            <tspan key={line} x={middle} y={y + 23 + i * 13}>
              {line}
            </tspan>
          ))}
        </text>
      )}
    </g>
  );
}

function GoneReason({
  bar,
  top,
  bottom,
  measure,
}: {
  readonly bar: ScoreBar;
  readonly top: number;
  readonly bottom: number;
  readonly measure: Measure;
}) {
  if (bar.source.kind !== 'lesson') return null;
  const { status, reason } = bar.source;
  const fitted = fitTitle(say.gone(status, reason), bottom - top - 12, 2, 11.5, measure);
  if (fitted === null) return null;
  const x = bar.x + bar.width / 2;
  const y = (top + bottom) / 2;
  return (
    <text className="gone-reason" transform={`rotate(-90 ${x} ${y})`} textAnchor="middle">
      {fitted.lines.map((line, i) => (
        <tspan key={line} x={x} y={y + 4 + (i - (fitted.lines.length - 1) / 2) * 13}>
          {line}
        </tspan>
      ))}
    </text>
  );
}
