// First lessons of those who wait for one, all in one step: a course with its weekly time, and a first unit on it.

import { type FormEvent, useState } from 'react';
import type { PlainDate } from '#core';
import { sendTogether } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import type { Waiting } from '../../components/find-waiting.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { useTerm, useUnits } from '../../hooks/use-view.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import { findBeside } from './beside-sibling.ts';
import {
  type FirstLesson,
  findClash,
  findFirstLessonFaults,
  firstLessonToCommands,
  isBegun,
  lessonToStand,
  newFirstLesson,
  nextFree,
  weekToStands,
} from './first-lessons-draft.ts';
import { FirstLessonsRow } from './first-lessons-row.tsx';
import '../../components/form.css';
import './students.css';
import './first-lessons.css';

const says = words.students.first;

export interface FirstLessonsProps {
  readonly waiting: readonly Waiting[];
  readonly today: PlainDate;
  /** What stands before the rows, where the page does not say it. */
  readonly lead?: string;
  /** Told when courses were planned; absent where the page itself shows it. */
  readonly onDone?: () => void;
  /** Where the rest can wait; absent where there is nowhere else to go on to. */
  readonly onLater?: () => void;
}

export function FirstLessons({ lead, waiting, today, onDone, onLater }: FirstLessonsProps) {
  const format = useFormat();
  const units = useUnits().data?.units ?? [];
  const week = useTerm().data?.week ?? [];
  const [lessons, setLessons] = useState<ReadonlyMap<string, FirstLesson>>(new Map());
  const [tried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);

  const lessonOf = (one: Waiting) => lessons.get(one.key) ?? newFirstLesson(one);
  const rows = waiting.map((one) => ({ one, lesson: lessonOf(one) }));
  const standsBut = (key: string) => [
    ...weekToStands(week),
    ...rows.flatMap(({ one, lesson }) => (one.key === key ? [] : (lessonToStand(one, lesson) ?? []))),
  ];
  const clashOf = ({ one, lesson }: (typeof rows)[number]) => {
    const own = lessonToStand(one, lesson);
    const clash = own && findClash(own, standsBut(one.key));
    return clash ? says.clash(clash.name, format.time(clash.time)) : null;
  };
  const besideOf = (one: Waiting, lesson: FirstLesson) =>
    findBeside(one.student?.siblings.map(({ id }) => id) ?? [], Number(lesson.minutes), standsBut(one.key));
  const change = (one: Waiting, next: FirstLesson) => {
    const before = lessonOf(one);
    // A day that is chosen goes on next to a sibling, or where its last lesson ends, which is where most lessons are.
    const time =
      next.weekday !== before.weekday && next.time === ''
        ? (besideOf(one, next).places.find(({ weekday }) => weekday === next.weekday)?.time ??
          nextFree(next.weekday, standsBut(one.key)))
        : next.time;
    setLessons(new Map(lessons).set(one.key, { ...next, time }));
  };
  const begun = rows.filter(({ lesson }) => isBegun(lesson));
  const faulty = begun.filter(({ lesson }) => Object.keys(findFirstLessonFaults(lesson)).length > 0);

  async function plan(event: FormEvent) {
    event.preventDefault();
    setTried(true);
    if (faulty.length > 0 || begun.length === 0 || busy) return;
    const commands = begun.flatMap(({ one, lesson }) =>
      firstLessonToCommands(one, lesson, units, today, newId),
    );
    setBusy(true);
    const sent = await sendTogether(commands, says.done(begun.map(({ one }) => one.name)));
    setBusy(false);
    if (sent) onDone?.();
  }

  return (
    <form className="first-lessons" onSubmit={plan} noValidate>
      {lead && <p>{lead}</p>}
      <ol>
        {rows.map((row) => (
          <FirstLessonsRow
            key={row.one.key}
            waiting={row.one}
            lesson={row.lesson}
            units={units}
            faults={tried ? findFirstLessonFaults(row.lesson) : {}}
            clash={clashOf(row)}
            beside={besideOf(row.one, row.lesson)}
            onLesson={(next) => change(row.one, next)}
          />
        ))}
      </ol>
      <div className="form-end">
        <Button kind="primary" type="submit" pending={busy} isDisabled={begun.length === 0}>
          {waiting.length === 1 ? says.beginOne : says.action(begun.length)}
        </Button>
        {onLater && (
          <Button kind="plain" onPress={onLater}>
            {says.later}
          </Button>
        )}
        {tried && faulty.length > 0 && (
          <p className="fault" role="alert">
            {words.frame.mendFirst(faulty.length)}
          </p>
        )}
      </div>
    </form>
  );
}
