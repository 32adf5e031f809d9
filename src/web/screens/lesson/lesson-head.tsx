import { Link } from 'wouter';
import type { LessonView } from '#contract';
import { addMinutes, minutesOf } from '#core';
import { Button } from '../../components/button.tsx';
import { UndoButton } from '../../components/undo-button.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { useStudioNow } from '../day/use-studio-now.ts';

/** Whose lesson it is, how much of it is left, and the way out. */
export function LessonHead({ lesson, onKeys }: { readonly lesson: LessonView; readonly onKeys: () => void }) {
  return (
    <header className="lesson-head">
      <Link href={`/day/${lesson.date}`} className="lesson-back">
        ‹ {words.lesson.backToDay}
      </Link>
      <div className="lesson-who">
        <h1 className="lesson-name">{lesson.learner.name}</h1>
        <p className="lesson-about">
          {words.lesson.number(lesson.number)} · <TimeLeft lesson={lesson} />
          {lesson.absent.length > 0 && <> · {words.lesson.away.without(lesson.absent)}</>}
        </p>
      </div>
      <div className="lesson-tools">
        <UndoButton />
        <Button kind="plain" className="lesson-tool" onPress={onKeys}>
          {words.lesson.keys}
        </Button>
        <Link href={`/lesson/${lesson.id}/close`} className="lesson-tool lesson-link">
          {words.lesson.toClose}
        </Link>
      </div>
    </header>
  );
}

function TimeLeft({ lesson }: { readonly lesson: LessonView }) {
  const now = useStudioNow();
  const format = useFormat();
  const ends = addMinutes(lesson.time, lesson.minutes);
  if (!now || now.date !== lesson.date)
    return `${format.day(lesson.date)} · ${format.time(lesson.time)} · ${format.minutes(lesson.minutes)}`;
  const minute = minutesOf(now.time) - minutesOf(lesson.time);
  if (minute < 0) return words.lesson.begins(format.time(lesson.time));
  if (minute >= lesson.minutes) return words.lesson.ended(format.time(ends));
  return (
    <strong className="lesson-left">
      {words.lesson.leftOf(format.minutes(lesson.minutes - minute), format.time(ends))}
    </strong>
  );
}
