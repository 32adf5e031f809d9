// What to print, bring or set up today, each once, with whom it is for. Ticks are this browser's, for this day.

import { useState } from 'react';
import type { DayView } from '#contract';
import { sentenceCase } from '../../app/sentence-case.ts';
import { words } from '../../words/index.ts';
import './set-up.css';

const storageKey = (date: string) => `levare-set-up ${date}`;

function readTicks(date: string): readonly string[] {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(storageKey(date)) ?? '[]');
    return Array.isArray(found) ? found.filter((x): x is string => typeof x === 'string') : [];
  } catch {
    return [];
  }
}

/** On a narrow page a longer list is folded, so that the programme stays in sight. */
const mostUnfolded = 6;

export interface SetUpProps {
  readonly day: DayView;
  /** The first lesson has begun: on a narrow page the list is folded away, because it was seen to. */
  readonly begun: boolean;
}

export function SetUp({ day, begun }: SetUpProps) {
  const [open, setOpen] = useState(
    () => window.matchMedia('(min-width: 60rem)').matches || (!begun && day.setUp.length <= mostUnfolded),
  );
  const [ticks, setTicks] = useState(() => readTicks(day.date));
  const nameById = new Map(day.lessons.map((l) => [l.id, l.learner.name]));
  const left = day.setUp.filter(({ item }) => !ticks.includes(item)).length;
  const tick = (item: string, ticked: boolean) => {
    const next = ticked ? [...ticks, item] : ticks.filter((t) => t !== item);
    setTicks(next);
    try {
      localStorage.setItem(storageKey(day.date), JSON.stringify(next));
    } catch {
      // Ticked on this page only.
    }
  };
  return (
    <details className="day-set-up" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className="day-aside-title">
        <h2>{words.day.setUp}</h2>
        <span className="day-set-up-left">{words.day.setUpLeft(left, day.setUp.length)}</span>
      </summary>
      {day.setUp.length === 0 ? (
        <p className="soft">{words.day.nothingToSetUp}</p>
      ) : (
        <ul>
          {day.setUp.map(({ item, lessons }) => (
            <li key={item}>
              <label className="day-set-up-item">
                <input
                  type="checkbox"
                  checked={ticks.includes(item)}
                  onChange={(event) => tick(item, event.target.checked)}
                />
                <span>
                  <span className="day-set-up-what">{sentenceCase(item)}</span>{' '}
                  <span className="day-set-up-for">
                    {words.day.setUpFor(
                      lessons
                        .map((id) => nameById.get(id) ?? '')
                        .filter(Boolean)
                        .join(', '),
                    )}
                  </span>
                </span>
              </label>
            </li>
          ))}
        </ul>
      )}
    </details>
  );
}
