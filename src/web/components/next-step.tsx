// One line that leads on while a studio is still being set up; gone once a course has a unit.

import type { StudentsView } from '#contract';
import { useStudents, useStudio } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { ButtonLink } from './button-link.tsx';
import './next-step.css';

const says = words.welcome.start;

export type Stand = 'term' | 'students' | 'day';

/** On the page of one step, or of the day: the next one, when this is done and that is not. */
export function NextStep({ after }: { readonly after: Stand }) {
  const studio = useStudio().data;
  if (!studio || studio.demo) return null;
  const { terms, students, courses } = studio.counts;
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
  return terms > 0 && courses > 0 && !studio.unitGiven ? <GiveFirst /> : null;
}

/** Students with their times, and nothing yet to teach in them. */
function GiveFirst() {
  const view = useStudents().data;
  const first = view && firstToGive(view);
  if (!first) return null;
  return (
    <p className="next-step no-print">
      <span>{says.steps.unit.text}</span>
      <ButtonLink to={first.address} kind="primary">
        {says.steps.unit.give(first.name)}
      </ButtonLink>
    </p>
  );
}

/** The first course of the list, with the choice of a unit open; a group's stands with its members. */
function firstToGive({ courses, groups }: StudentsView) {
  for (const { id, learner, student } of courses) {
    const at = student ?? groups.find((group) => group.courses.includes(id))?.members[0];
    if (at) return { name: learner, address: `/student/${at}?course=${id}&give` };
  }
  return null;
}
