// One student: the course score on top, then what the course holds, what stands apart, skills over time, and how it is
// planned.

import { memo, type ReactNode, useCallback, useState } from 'react';
import { Link, useParams, useSearchParams } from 'wouter';
import type { CourseView, StudentView } from '#contract';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { Empty } from '../../components/empty.tsx';
import { findWaiting } from '../../components/find-waiting.ts';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { useCourse, useStudent, useStudents, useStudio } from '../../hooks/use-view.ts';
import { CourseScore } from '../../score/course-score.tsx';
import { isOver } from '../../score/is-over.ts';
import { TakeList } from '../../takes/take-list.tsx';
import { words } from '../../words/index.ts';
import { FirstLessons } from '../students/first-lessons.tsx';
import { StudentDialog } from '../students/student-dialog.tsx';
import { ApartLists } from './apart-lists.tsx';
import { FamilyNotes } from './family-notes.tsx';
import { GiveUnit } from './give-unit.tsx';
import { MovedList } from './moved-list.tsx';
import { PlanCourse } from './plan-course.tsx';
import { AddLesson, PlanDays } from './plan-days.tsx';
import { PlanSettings } from './plan-settings.tsx';
import { PlanStrands } from './plan-strands.tsx';
import { SkillList } from './skill-list.tsx';
import { StudentFacts } from './student-facts.tsx';
import { UnitList } from './unit-list.tsx';
import { WhatIfPanel } from './what-if-panel.tsx';
import '../../components/form.css';
import './student.css';

const say = words.student;

export function StudentScreen() {
  const { id } = useParams<{ id: string }>();
  const student = useStudent(id);
  const [search, setSearch] = useSearchParams();
  const courses = student.data?.courses ?? [];
  const chosen = courses.find((one) => one.id === search.get('course')) ?? courses[0] ?? null;
  const course = useCourse(chosen?.id ?? null);
  const [open, setOpen] = useState<'give' | 'whatIf' | 'change' | null>(search.has('give') ? 'give' : null);
  const give = useCallback(() => setOpen('give'), []);
  const stopGiving = () => {
    setOpen(null);
    if (!search.has('give')) return;
    // Loading the page again is not asking for it again.
    search.delete('give');
    setSearch(search, { replace: true });
  };
  const ready = course.data !== undefined && !isOver(course.data);
  return (
    <Page
      title={student.data?.name ?? say.title}
      lead={student.data && <Lead student={student.data} course={course.data ?? null} />}
      wide
      beside={course.data && <StudentFacts course={course.data} student={id ?? ''} />}
      actions={
        <>
          {student.data && (
            <Button kind="plain" onPress={() => setOpen('change')}>
              {say.change}
            </Button>
          )}
          {ready && (
            <Button
              aria-expanded={open === 'whatIf'}
              onPress={() => setOpen(open === 'whatIf' ? null : 'whatIf')}
            >
              {say.whatIf.open}
            </Button>
          )}
          {ready && (
            <Button kind={open === 'whatIf' ? 'quiet' : 'primary'} onPress={() => setOpen('give')}>
              {say.units.give}
            </Button>
          )}
        </>
      }
    >
      <Loaded view={student}>
        {(view) =>
          chosen === null ? (
            <>
              <FirstOf
                student={view}
                course={null}
                otherwise={
                  <Empty
                    sentence={say.noCourse}
                    action={<ButtonLink to="/students">{say.toStudents}</ButtonLink>}
                  />
                }
              />
              <div className="student-below no-print">
                <FamilyNotes student={view} />
              </div>
            </>
          ) : (
            <>
              <CourseChoice student={view} chosen={chosen.id} />
              <Loaded view={course}>
                {(held) => (
                  <Course
                    key={held.id}
                    course={held}
                    student={view}
                    trying={open === 'whatIf'}
                    onGive={give}
                    onClose={() => setOpen(null)}
                  />
                )}
              </Loaded>
            </>
          )
        }
      </Loaded>
      <StudentDialog
        student={student.data?.id ?? null}
        open={open === 'change'}
        onClose={() => setOpen(null)}
      />
      {open === 'give' && course.data && (
        <GiveUnit course={course.data} given={search.get('give') ?? ''} onClose={stopGiving} />
      )}
    </Page>
  );
}

/** A course with neither a lesson nor a time in the week from which one could come. */
const isBare = (course: CourseView): boolean =>
  course.slots.length === 0 && !course.bars.some(({ kind }) => kind === 'lesson') && !isOver(course);

function Course({
  course,
  student,
  trying,
  onGive,
  onClose,
}: {
  readonly course: CourseView;
  readonly student: StudentView;
  readonly trying: boolean;
  readonly onGive: () => void;
  readonly onClose: () => void;
}) {
  const format = useFormat();
  return (
    <div className="student">
      {course.learner.group !== null && <Members course={course} />}
      {course.ended &&
        (isOver(course) ? (
          <p className="fault">{say.ended(format.day(course.ended, 'long'))}</p>
        ) : (
          <p>{say.ends(format.day(course.ended, 'long'))}</p>
        ))}
      {trying ? (
        <WhatIfPanel course={course} onClose={onClose} />
      ) : (
        <>
          <MovedList course={course} />
          {isBare(course) ? (
            <FirstOf student={student} course={course} otherwise={<CourseScore course={course} />} />
          ) : (
            <CourseScore course={course} />
          )}
        </>
      )}
      <Below course={course} student={student} onGive={onGive} />
    </div>
  );
}

/** What stands under the score: it stays as it is while a form opens over it. */
const Below = memo(function Below({
  course,
  student,
  onGive,
}: {
  readonly course: CourseView;
  readonly student: StudentView;
  readonly onGive: () => void;
}) {
  return (
    <>
      <div className="student-below no-print">
        <div>
          <UnitList course={course} onGive={onGive} />
          {/* Of a course that is over, nothing waits any more. */}
          {!isOver(course) && <ApartLists course={course} />}
          <FamilyNotes student={student} />
        </div>
        <div>
          <SkillList course={course} member={student.id} />
          <TakeList course={course} student={student.id} />
        </div>
      </div>
      <PlanParts course={course} />
    </>
  );
});

/** How the course is planned: many fields, made when first looked at. */
function PlanParts({ course }: { readonly course: CourseView }) {
  const [seen, setSeen] = useState(false);
  return (
    <details className="student-plan no-print" onToggle={() => setSeen(true)}>
      <summary>
        <h2>{say.plan.title}</h2>
      </summary>
      {seen && (
        <div className="student-plan-parts">
          <PlanCourse key={`course ${course.revision}`} course={course} />
          <PlanDays course={course} />
          <PlanStrands key={`strands ${course.revision}`} course={course} />
          <PlanSettings key={`settings ${course.revision}`} course={course} />
        </div>
      )}
    </details>
  );
}

/**
 * What a student without a course, or a course without any lesson, waits for, to be said on the spot; `otherwise` where
 * there is nothing of the kind.
 */
function FirstOf({
  student,
  course,
  otherwise,
}: {
  readonly student: StudentView;
  readonly course: CourseView | null;
  readonly otherwise: ReactNode;
}) {
  const view = useStudents();
  const today = useStudio().data?.today;
  const first = words.students.first;
  return (
    <Loaded view={view}>
      {(students) => {
        const waiting = findWaiting(students).filter(
          (one) =>
            one.wantsTime &&
            (course ? one.course?.id === course.id : one.course === null && one.student?.id === student.id),
        );
        return waiting.length === 0 || today === undefined ? (
          otherwise
        ) : (
          <>
            <FirstLessons
              lead={(course ? first.ofCourse : first.ofOne)(student.name)}
              waiting={waiting}
              today={today}
            />
            {/* Outside of the form: its own form would send this one, too. */}
            {course && <AddLesson course={course} />}
          </>
        );
      }}
    </Loaded>
  );
}

function Lead({ student, course }: { readonly student: StudentView; readonly course: CourseView | null }) {
  const format = useFormat();
  const facts: string[] = [];
  if (student.age !== null) facts.push(say.age(student.age));
  if (course) facts.push(say.plays(course.learner.instrumentName, words.stageNames[course.learner.stage]));
  const leaving = course && student.left && student.left >= course.today ? say.leaves : say.left;
  facts.push(
    student.left ? leaving(format.day(student.left, 'long')) : say.since(format.day(student.since, 'month')),
  );
  return <>{facts.join(' · ')}</>;
}

function CourseChoice({ student, chosen }: { readonly student: StudentView; readonly chosen: string }) {
  if (student.courses.length < 2) return null;
  return (
    <nav className="course-choice no-print" aria-label={say.courses}>
      {student.courses.map((one) => (
        <Link
          key={one.id}
          href={`/student/${student.id}?course=${one.id}`}
          aria-current={one.id === chosen ? 'page' : undefined}
        >
          {one.group === null ? one.instrumentName : say.group(one.group)}
        </Link>
      ))}
    </nav>
  );
}

function Members({ course }: { readonly course: CourseView }) {
  return (
    <p className="group-members">
      {say.members(course.learner.name)}:{' '}
      {course.learner.members.map((member, i) => (
        <span key={member.student}>
          {i > 0 && ', '}
          <Link href={`/student/${member.student}`}>{member.name}</Link>
        </span>
      ))}
    </p>
  );
}
