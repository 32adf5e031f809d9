// One line that leads on while a studio is still being set up, and whenever somebody waits for a first lesson.

import type { StudentsView } from '#contract';
import { useStudents, useStudio } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { ButtonLink } from './button-link.tsx';
import { findWaiting, isPressing, type Waiting } from './find-waiting.ts';
import './next-step.css';

const says = words.welcome.start;

export type Stand = 'term' | 'students' | 'day' | 'lessons';

/**
 * On the page of one step, or of the day: the next one, when this is done and that is not. `lessons` is a day that has
 * some, each of which says itself when its course wants a unit.
 */
export function NextStep({ after }: { readonly after: Stand }) {
  const studio = useStudio().data;
  if (!studio || studio.demo) return null;
  const { terms, students } = studio.counts;
  if (after === 'term' && terms > 0 && students === 0) {
    return (
      <p className="next-step no-print">
        <span>{words.term.next.students}</span>
        <ButtonLink to="/students?add" kind="primary">
          {words.term.next.studentsAction}
        </ButtonLink>
        <ButtonLink to="/students/import" kind="plain">
          {says.steps.students.other}
        </ButtonLink>
      </p>
    );
  }
  if (after === 'students' && students > 0 && terms === 0) {
    return (
      <p className="next-step no-print">
        <span>{says.steps.term.text}</span>
        <ButtonLink to="/term?add" kind="primary">
          {says.steps.term.action}
        </ButtonLink>
      </p>
    );
  }
  return terms > 0 && students > 0 ? <FirstOf isAmongLessons={after === 'lessons'} /> : null;
}

/** Students who wait for a time in the week or a first unit; the only one of them straight to theirs. */
function FirstOf({ isAmongLessons }: { readonly isAmongLessons: boolean }) {
  const view = useStudents().data;
  const waiting = view
    ? findWaiting(view).filter((one) => isPressing(one) && (one.wantsTime || !isAmongLessons))
    : [];
  const [only, ...others] = waiting;
  if (!view || !only) return null;
  const give = others.length === 0 && !only.wantsTime ? giveAddress(only, view) : null;
  const first = words.students.first;
  return (
    <p className="next-step no-print">
      <span>{give ? says.steps.unit.text : first.waiting(waiting.map(({ name }) => name))}</span>
      <ButtonLink to={give ?? '/students/first'} kind={isAmongLessons ? 'quiet' : 'primary'}>
        {give ? says.steps.unit.give(only.name) : first.begin}
      </ButtonLink>
    </p>
  );
}

/** A course's page with the choice of a unit open; a group's stands with its members. */
function giveAddress({ course, student }: Waiting, { groups }: StudentsView): string | null {
  if (!course) return null;
  const at = student?.id ?? groups.find((group) => group.courses.includes(course.id))?.members[0];
  return at === undefined ? null : `/student/${at}?course=${course.id}&give`;
}
