import { useState } from 'react';
import type { CourseView } from '#contract';
import { Button } from '../../components/button.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useHeard } from '../../hooks/use-heard.ts';
import { words } from '../../words/index.ts';
import { tellingMoves } from './telling-moves.ts';

const say = words.score.moves;
/** Sentences shown at once: the score beneath them is what the page is for. */
const most = 2;

/** What the last replanning moved and why, most telling first, until the teacher has looked. */
export function MovedList({ course }: { readonly course: CourseView }) {
  const send = useCommand();
  const [all, setAll] = useState(false);
  const moves = tellingMoves(course.moves);
  const rest = moves.length - most;
  const [first] = moves;
  const heard = useHeard(course.moves, first ? say.heard(first.sentence, moves.length - 1) : '');
  return (
    <>
      <p className="only-heard" role="status">
        {heard}
      </p>
      {moves.length > 0 && (
        <section className="moved-list no-print" aria-labelledby="moved-title">
          <h2 id="moved-title">{say.title}</h2>
          <ul className="moved-sentences">
            {(all ? moves : moves.slice(0, most)).map((move) => (
              <li key={`${move.key} ${move.from} ${move.to}`}>{move.sentence}</li>
            ))}
          </ul>
          <p className="moved-deed">
            {rest > 0 && (
              <Button kind="plain" aria-expanded={all} onPress={() => setAll(!all)}>
                {all ? words.student.fewer : words.student.more(rest)}
              </Button>
            )}
            <Button onPress={() => void send({ type: 'course.looked', course: course.id })}>
              {say.looked}
            </Button>
          </p>
        </section>
      )}
    </>
  );
}
