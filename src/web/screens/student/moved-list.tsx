import type { CourseView } from '#contract';
import { Button } from '../../components/button.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';

const say = words.score.moves;

/** What the last replanning moved and why, until the teacher has looked. */
export function MovedList({ course }: { readonly course: CourseView }) {
  const send = useCommand();
  if (course.moves.length === 0) return null;
  return (
    <section className="moved-list no-print" aria-labelledby="moved-title">
      <h2 id="moved-title">{say.title}</h2>
      <ul>
        {course.moves.map((move) => (
          <li key={move.key}>{move.sentence}</li>
        ))}
      </ul>
      <p className="moved-deed">
        <Button onPress={() => void send({ type: 'course.looked', course: course.id })}>{say.looked}</Button>
        <span className="faint">{say.help}</span>
      </p>
    </section>
  );
}
