// The week drawn as lines: one for each day, running down through the hours; a lesson is a stroke on it with a name.

import type { TermView } from '#contract';
import { addMinutes, type PlainTime } from '#core';
import { place } from '../../components/place.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { layoutWeek, type PlacedSlot, type WeekSlot } from './week-layout.ts';
import './week.css';

const says = words.term.week;
/** So many minutes down the line; how high a minute is, the style says. */
const down = (minutes: number) => `calc(${minutes} * var(--minute))`;
const midnight = '00:00' as PlainTime;

export interface WeekProps {
  readonly week: TermView['week'];
  readonly onChange: (slot: WeekSlot) => void;
}

export function Week({ week, onChange }: WeekProps) {
  const format = useFormat();
  const { fromHour, toHour, days } = layoutWeek(week);
  const hours = Array.from({ length: toHour - fromHour + 1 }, (_, n) => fromHour + n);
  const whole = down((toHour - fromHour) * 60);
  const clashes = week.filter((s) => s.clash).length;

  const drawn = ({ slot, top, lane, lanes }: PlacedSlot) => {
    const from = format.time(slot.time);
    return (
      <li
        key={slot.slot}
        className={`week-slot${slot.clash ? ' week-clash' : ''}${lanes > 1 ? ' week-beside' : ''}`}
        style={place({
          top: down(top),
          height: down(slot.minutes),
          left: `${(lane / lanes) * 100}%`,
          width: `${100 / lanes}%`,
        })}
      >
        <button type="button" onClick={() => onChange(slot)}>
          <span className="week-time">{from}</span> <span className="week-name">{slot.learner}</span>
          {slot.clash && <span className="week-says-clash"> {says.clash}</span>}
          <span className="only-heard">
            {[format.weekday(slot.weekday), format.minutes(slot.minutes), slot.instrumentName].join(', ')}
          </span>
        </button>
      </li>
    );
  };

  return (
    <>
      {clashes > 0 && <p className="fault">{says.clashes(clashes)}</p>}
      <div
        className="week"
        style={{ gridTemplateColumns: `auto repeat(${days.length}, minmax(0, 1fr))`, ...place({ whole }) }}
      >
        <div className="week-hours" aria-hidden="true">
          {hours.map((hour) => (
            <span key={hour} style={{ top: down((hour - fromHour) * 60) }}>
              {format.time(addMinutes(midnight, hour * 60))}
            </span>
          ))}
        </div>
        {days.map((day) => (
          <section key={day.weekday} className="week-day" aria-label={format.weekday(day.weekday)}>
            <h3>{format.weekday(day.weekday)}</h3>
            <ol className="week-line">{day.slots.map(drawn)}</ol>
          </section>
        ))}
      </div>
    </>
  );
}
