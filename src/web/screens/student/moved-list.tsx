import type { CourseView } from '#contract';
import { Button } from '../../components/button.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';
import { LongList } from './long-list.tsx';

const say = words.score.moves;

/** What the last replanning moved and why, until the teacher has looked. */
export function MovedList({ course }: { readonly course: CourseView }) {
  const send = useCommand();
  if (course.moves.length === 0) return null;
  const moves = [...course.moves].sort((a, b) => (soonest(a) < soonest(b) ? -1 : 1));
  return (
    <section className="moved-list no-print" aria-labelledby="moved-title">
      <h2 id="moved-title">{say.title}</h2>
      <LongList items={moves} most={4} className="moved-sentences">
        {(move) => <li key={`${move.key} ${move.from} ${move.to}`}>{move.sentence}</li>}
      </LongList>
      <p className="moved-deed">
        <Button onPress={() => void send({ type: 'course.looked', course: course.id })}>{say.looked}</Button>
        <span className="faint">{say.help}</span>
      </p>
    </section>
  );
}

/** The first day that a move touches. */
const soonest = ({ from, to }: CourseView['moves'][number]): string =>
  from !== null && to !== null ? (from < to ? from : to) : (from ?? to ?? '');
