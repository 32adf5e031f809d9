import type { LessonView } from '#contract';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';

/** Last lesson's note, the practice that was set, and its sheet in a window of its own: the lesson and its clock stay. */
export function LastTime({ lesson }: { readonly lesson: LessonView }) {
  const format = useFormat();
  const { previous } = lesson;
  if (!previous) return <p className="soft">{words.lesson.firstLesson}</p>;
  const { lesson: id, note, practice, absent } = previous;
  const tasks = practice.split('\n').filter((line) => line.trim() !== '');
  return (
    <div className="last-time">
      <p className="last-time-on">
        {words.lesson.lastOn(format.day(previous.date, 'day'))}
        {absent.length > 0 && `, ${words.lesson.away.without(absent)}`}
      </p>
      {note !== '' && <p className="last-time-note">{note}</p>}
      {tasks.length > 0 && (
        <>
          <p className="lesson-label">{words.lesson.lastPractice}</p>
          <ul className="tasks">
            {tasks.map((task) => (
              <li key={task}>{task}</li>
            ))}
          </ul>
        </>
      )}
      {note === '' && tasks.length === 0 && <p className="soft">{words.lesson.nothingWritten}</p>}
      <a className="show-material" href={`/practice/lesson/${id}`} target="_blank" rel="noreferrer">
        {words.lesson.lastSheet}
      </a>
    </div>
  );
}
