import type { LessonView } from '#contract';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';

/** Last lesson's note and the practice that was set: one line, unfolded where it is wanted. */
export function LastTime({ lesson, open }: { readonly lesson: LessonView; readonly open: boolean }) {
  const format = useFormat();
  const { previous } = lesson;
  if (!previous) return <p className="last-time-none">{words.lesson.firstLesson}</p>;
  const { note, practice } = previous;
  const tasks = practice.split('\n').filter((line) => line.trim() !== '');
  return (
    <details className="fold last-time" open={open}>
      <summary>
        <span className="last-time-on">{words.lesson.lastOn(format.day(previous.date, 'day'))}</span>{' '}
        <span className="last-time-first">
          {note.split('\n')[0] || tasks[0] || words.lesson.nothingWritten}
        </span>
      </summary>
      <div className="last-time-whole">
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
      </div>
    </details>
  );
}
