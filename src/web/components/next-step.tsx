// One line that leads on while a studio is still being set up; gone once there is a course.

import { useStudio } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { ButtonLink } from './button-link.tsx';
import './next-step.css';

const says = words.welcome.start;

export type Stand = 'term' | 'students';

/** On the page of one step: the next one, when this is done and that is not. */
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
  return null;
}
