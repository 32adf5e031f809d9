// The first three steps, each one action, in an order that can be left and come back to.

import { Redirect } from 'wouter';
import type { StudioView } from '#contract';
import { ButtonLink } from '../../components/button-link.tsx';
import { LevelNote } from '../../components/level-note.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useStudents, useStudio } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { findNextStep } from './next-step.ts';
import './start.css';

const says = words.welcome.start;

function Steps({ counts }: { readonly counts: StudioView['counts'] }) {
  const students = useStudents().data?.students ?? [];
  const next = findNextStep(counts);
  const first = students.find((s) => s.courses.length > 0) ?? students[0];
  const steps = [
    {
      key: 'term',
      ...says.steps.term,
      done: counts.terms > 0,
      act: (
        <ButtonLink to="/term?add" kind={next === 'term' ? 'primary' : 'quiet'}>
          {says.steps.term.action}
        </ButtonLink>
      ),
    },
    {
      key: 'students',
      ...says.steps.students,
      done: counts.students > 0,
      act: (
        <>
          <ButtonLink to="/students?add" kind={next === 'students' ? 'primary' : 'quiet'}>
            {says.steps.students.action}
          </ButtonLink>
          <ButtonLink to="/students/import">{says.steps.students.other}</ButtonLink>
        </>
      ),
    },
    {
      key: 'unit',
      ...says.steps.unit,
      done: false,
      act: (
        <ButtonLink
          to={first && students.length === 1 ? `/student/${first.id}` : '/students'}
          kind={next === 'unit' ? 'primary' : 'quiet'}
        >
          {says.steps.unit.action}
        </ButtonLink>
      ),
    },
  ];
  return (
    <ol className="steps">
      {steps.map((step) => (
        <li key={step.key} aria-current={next === step.key ? 'step' : undefined}>
          <LevelNote level={step.done ? 3 : next === step.key ? 1 : 0} size={36} decorative />
          <div className="step-words">
            <h2>
              {step.name}
              {step.done && <span className="faint"> {says.done}</span>}
            </h2>
            <p className="soft">{step.text}</p>
          </div>
          <div className="step-act">{step.act}</div>
        </li>
      ))}
    </ol>
  );
}

export function StartScreen() {
  const studio = useStudio();
  if (studio.data?.demo) return <Redirect to="/" />;
  return (
    <Page title={says.title} lead={says.lead}>
      <Loaded view={studio}>{({ counts }) => <Steps counts={counts} />}</Loaded>
    </Page>
  );
}
