// One student's week on paper: how long, what to do with boxes to tick, what to play from, and when they come again.

import { useState } from 'react';
import type { LessonView } from '#contract';
import { type PlainDate, weekdayOf } from '#core';
import type { SheetAnswer } from '../../engraver/sheet-wish.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { useOutbox } from '../../hooks/use-outbox.ts';
import { useStudio } from '../../hooks/use-view.ts';
import { PlayableSheet } from '../../sound/playable-sheet.tsx';
import { PracticeTake } from '../../takes/practice-take.tsx';
import { words } from '../../words/index.ts';
import { suggestMinutesADay } from './minutes-a-day.ts';
import { PracticeBacking } from './practice-backing.tsx';
import { PracticeChoice } from './practice-choice.tsx';
import { practiceDays } from './practice-days.ts';
import type { PracticeMaterial, PracticeNotation } from './practice-materials.ts';
import { readPractice, withMinutes } from './practice-text.ts';
import { answerKey } from './use-practice-sheets.ts';

const says = words.practice;

export interface PracticeSheetProps {
  readonly lesson: LessonView;
  readonly materials: readonly PracticeMaterial[];
  readonly answers: ReadonlyMap<string, SheetAnswer>;
  /** Several sheets are printed as they are; one alone can still be changed. */
  readonly isAlone: boolean;
}

export function PracticeSheet({ lesson, materials, answers, isAlone }: PracticeSheetProps) {
  const format = useFormat();
  const studio = useStudio().data;
  const { learner, next } = lesson;
  const usual = suggestMinutesADay(learner.stage, learner.age);
  const given = lesson.practice.trim() === '' ? lesson.suggestedPractice : lesson.practice;
  const [text, setMinutes] = useMinutes(lesson, given);
  const { minutes, tasks } = readPractice(text);
  /** What the teacher ticked otherwise than it stands at first, by its id. */
  const [ticked, setTicked] = useState<ReadonlyMap<string, boolean>>(new Map());
  const isShown = ({ id, waits }: PracticeMaterial) => ticked.get(id) ?? !waits;
  const shown = materials.filter(isShown);
  return (
    <article className="practice-sheet" aria-label={`${says.title}: ${learner.name}`}>
      {isAlone && (
        <PracticeChoice
          minutes={minutes ?? usual}
          usual={usual}
          onMinutes={setMinutes}
          materials={materials}
          isShown={isShown}
          onShown={({ id }, shows) => setTicked(new Map(ticked).set(id, shows))}
        />
      )}
      <div className="practice-paper">
        <header className="practice-top">
          <div className="practice-head">
            <h2>{learner.name}</h2>
            <p>
              {learner.instrumentName} ·{' '}
              {next === null ? says.week : says.until(format.day(next.date, 'short'))}
            </p>
            <p className="practice-studio">{studio?.teacher || studio?.name}</p>
          </div>
        </header>
        <p className="practice-minutes">{says.aDay(minutes ?? usual)}</p>
        <Tasks lesson={lesson} isAlone={isAlone} tasks={tasks.length > 0 ? tasks : [says.noTasks]} />
        {/* Before the notation: at the end it could stand on a page of its own. */}
        <div className="practice-care">
          <p>{says.care}</p>
          <p className="practice-next">
            {next === null ? says.noNext : says.next(format.day(next.date, 'full'), format.time(next.time))}
          </p>
        </div>
        {shown.map((material) =>
          material.kind === 'backing' ? (
            <PracticeBacking key={material.id} lesson={lesson} material={material} />
          ) : (
            <Sheet key={material.id} material={material} answer={answers.get(answerKey(lesson, material))} />
          ),
        )}
      </div>
    </article>
  );
}

/** The practice text with minutes that can be changed; what is changed is written to the lesson. */
function useMinutes(lesson: LessonView, given: string): readonly [string, (minutes: string) => void] {
  const { post } = useOutbox();
  const [own, setOwn] = useState<string | null>(null);
  const text = own ?? given;
  return [
    text,
    (typed) => {
      const minutes = Number(typed);
      if (!Number.isInteger(minutes) || minutes < 5 || minutes > 180) return;
      const changed = withMinutes(text, minutes);
      setOwn(changed);
      const base = own ?? lesson.practice;
      post({ type: 'lesson.write', lesson: lesson.id, field: 'practice', base, text: changed });
    },
  ];
}

interface TasksProps {
  readonly lesson: LessonView;
  readonly tasks: readonly string[];
  readonly isAlone: boolean;
}

function Tasks({ lesson, tasks, isAlone }: TasksProps) {
  const format = useFormat();
  const days = practiceDays(lesson.date, lesson.next?.date ?? null);
  const dayOf = (day: PlainDate) => format.weekday(weekdayOf(day), 'short').slice(0, 2);
  return (
    <table className="practice-tasks">
      <thead>
        <tr>
          <th scope="col">{says.tasks}</th>
          {days.map((day) => (
            <th key={day} scope="col" className="practice-day">
              <span aria-hidden="true">{dayOf(day)}</span>
              <span className="only-heard">{says.ticked(format.day(day, 'short'))}</span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {tasks.map((task, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines of a text are told apart by their place
          <tr key={at}>
            <th scope="row">
              {task} {isAlone && <PracticeTake lesson={lesson} task={task} />}
            </th>
            {days.map((day) => (
              <td key={day} className="practice-day" data-day={dayOf(day)}>
                <span className="practice-box" />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Sheet({
  material,
  answer,
}: {
  readonly material: PracticeNotation;
  readonly answer: SheetAnswer | undefined;
}) {
  if (answer === undefined) return null;
  if (!answer.ok)
    return (
      <p className="practice-refused no-print" role="note">
        {says.refused(material.title, answer.error.message)}
      </p>
    );
  return (
    <section className="practice-material">
      <h3>{material.title}</h3>
      <PlayableSheet
        drawn={answer.value}
        seed={material.seed}
        frame={(_, drawing) => <figure className="practice-notation">{drawing}</figure>}
      />
    </section>
  );
}
