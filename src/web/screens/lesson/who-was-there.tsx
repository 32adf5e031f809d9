// In a lesson of a group: one touch for each member who was not there. Sent as it is said, as levels are.

import { Link } from 'wouter';
import type { LessonView } from '#contract';
import { Tick } from '../../components/tick.tsx';
import { words } from '../../words/index.ts';
import { membersAsked } from './members-asked.ts';
import type { LessonDesk } from './use-lesson-desk.ts';

const say = words.lesson.away;

export interface WhoWasThereProps {
  readonly lesson: LessonView;
  readonly post: LessonDesk['post'];
}

export function WhoWasThere({ lesson, post }: WhoWasThereProps) {
  const members = membersAsked(lesson);
  if (members.length === 0) return null;
  const away = new Set(lesson.absent.map(({ student }) => student));
  const present = members.filter(({ student }) => !away.has(student));
  return (
    <fieldset className="close-who" aria-labelledby="close-who">
      <h2 id="close-who" className="close-heading">
        {say.title}
      </h2>
      <ul>
        {members.map(({ student, name }) => {
          const isAway = away.has(student);
          const isLast = !isAway && present.length === 1;
          return (
            <li key={student}>
              <Tick
                ticked={isAway}
                disabled={isLast}
                onTick={(ticked) =>
                  post({
                    type: 'lesson.absent',
                    lesson: lesson.id,
                    absent: members
                      .filter((one) => (one.student === student ? ticked : away.has(one.student)))
                      .map((one) => one.student),
                  })
                }
              >
                {name}
              </Tick>
            </li>
          );
        })}
      </ul>
      <p className="soft" aria-live="polite">
        {away.size === 0 ? say.help : say.noted}
      </p>
      {present.length === 1 && lesson.status !== 'taught' && (
        <p className="soft">
          {say.ifNobody} <Link href={`/day/${lesson.date}`}>{say.toDay}</Link>
        </p>
      )}
    </fieldset>
  );
}
