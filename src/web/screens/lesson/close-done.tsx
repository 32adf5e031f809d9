// After closing: what moved in the course and why, and on to the next lesson of the day.

import { useEffect, useState } from 'react';
import type { CourseView, LessonView } from '#contract';
import type { Id } from '#core';
import { theOutbox } from '../../app/the-outbox.ts';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { focusTitle } from '../../components/page.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { useOutbox } from '../../hooks/use-outbox.ts';
import { useCourse, useDay } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { courseAddress } from '../day/course-address.ts';
import type { LessonDesk } from './use-lesson-desk.ts';
import { WhoWasThere } from './who-was-there.tsx';

type MoveView = CourseView['moves'][number];

/** Moves shown at once; the rest is a touch away, and all of it in the course score. */
const mostMoves = 6;

const soonest = ({ from, to }: MoveView) => [from, to].filter((d) => d !== null).sort()[0] ?? '';
const soonestFirst = (moves: readonly MoveView[]): readonly MoveView[] =>
  [...moves].sort((a, b) => soonest(a).localeCompare(soonest(b)));

export function CloseDone({
  lesson,
  post,
}: {
  readonly lesson: LessonView;
  readonly post: LessonDesk['post'];
}) {
  const format = useFormat();
  const send = useCommand();
  const { pending, state } = useOutbox();
  const course = useCourse(lesson.course);
  const day = useDay(lesson.date);
  /** When the closing reached the studio: an older course does not know of it. 0 when it was closed before. */
  const [arrived, setArrived] = useState(() => (pending > 0 ? Number.POSITIVE_INFINITY : 0));
  const [closing, setClosing] = useState<Id<'change'> | null>(null);
  const say = words.lesson.closing;

  // The button that closed the lesson is gone: the title says now that it is closed.
  useEffect(focusTitle, []);
  useEffect(() => {
    if (pending === 0) setArrived((at) => (at === Number.POSITIVE_INFINITY ? Date.now() : at));
  }, [pending]);
  useEffect(
    () =>
      theOutbox.onSettled(({ command, reply }) => {
        if (command.type === 'lesson.close' && command.lesson === lesson.id && reply.ok)
          setClosing(reply.value.change);
      }),
    [lesson.id],
  );

  const next = day.data?.lessons
    .filter((l) => l.status === 'planned' && l.id !== lesson.id && l.time >= lesson.time)
    .sort((a, b) => a.time.localeCompare(b.time))[0];
  const moves = soonestFirst(course.data?.moves ?? []);
  const reckoning = pending > 0 || !course.data || course.dataUpdatedAt < arrived;

  return (
    <div className="close-done">
      <p className="only-heard" role="status">
        {state === 'waiting' ? say.waiting : reckoning ? say.closing : say.movedCount(moves.length)}
      </p>
      {state === 'waiting' ? (
        <p className="close-waiting">{say.waiting}</p>
      ) : reckoning ? (
        <p className="soft">{say.closing}</p>
      ) : (
        <section aria-labelledby="close-moved">
          <h2 id="close-moved" className="close-heading">
            {say.moved}
          </h2>
          {moves.length === 0 ? (
            <p>{say.nothingMoved}</p>
          ) : (
            <>
              <Moves moves={moves.slice(0, mostMoves)} />
              {moves.length > mostMoves && (
                <details className="close-more">
                  <summary>{say.moreMoves(moves.length - mostMoves)}</summary>
                  <Moves moves={moves.slice(mostMoves)} />
                </details>
              )}
            </>
          )}
        </section>
      )}
      <WhoWasThere lesson={lesson} post={post} />
      <div className="close-next">
        {next ? (
          <ButtonLink to={`/lesson/${next.id}`} kind="primary" large>
            {say.nextUpWith(next.learner.name, format.time(next.time))}
          </ButtonLink>
        ) : (
          <ButtonLink to={`/day/${lesson.date}`} kind="primary" large>
            {say.backToDay}
          </ButtonLink>
        )}
        <ButtonLink to={`/practice/lesson/${lesson.id}`} large>
          {words.practice.link}
        </ButtonLink>
        <ButtonLink to={courseAddress(lesson)} large>
          {say.toCourse}
        </ButtonLink>
        {next && (
          <ButtonLink to={`/day/${lesson.date}`} large>
            {say.backToDay}
          </ButtonLink>
        )}
        <ButtonLink to={`/lesson/${lesson.id}`} large>
          {say.lookAgain}
        </ButtonLink>
        {closing && pending === 0 && (
          <Button large onPress={() => void send({ type: 'undo', change: closing })}>
            {say.undo}
          </Button>
        )}
      </div>
      {!next && day.data && <p className="soft">{say.lastOfDay}</p>}
    </div>
  );
}

function Moves({ moves }: { readonly moves: readonly MoveView[] }) {
  const format = useFormat();
  const say = words.lesson.closing;
  return (
    <ul className="close-moves">
      {moves.map((move) => (
        <li key={move.key}>
          <span className="close-move-dates">
            {move.from ? format.day(move.from, 'day') : say.added}
            {move.to !== move.from && (
              <>
                <span aria-hidden="true"> → </span>
                <span className="only-heard"> {say.moveTo} </span>
                {move.to ? format.day(move.to, 'day') : say.left}
              </>
            )}
          </span>
          <span>{move.sentence}</span>
        </li>
      ))}
    </ul>
  );
}
