import { useState } from 'react';
import type { CourseView, Step } from '#contract';
import { sendTogether } from '../../app/send.ts';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import { LongList } from './long-list.tsx';
import { ObserveForm } from './observe-form.tsx';
import { unitsOnStrand } from './strand-order.ts';

const say = words.student;

/** What the course does not hold now, and why: not ready, left out, set aside. */
export function ApartLists({ course }: { readonly course: CourseView }) {
  // What is not ready or set aside stands under a heading of its own, with what can be done about it.
  const elsewhere = [...course.notReady, ...course.setAside];
  const leftOut = course.leftOut.filter(
    (left) => !elsewhere.some((one) => one.courseUnit === left.courseUnit && one.activity === left.activity),
  );
  return (
    <>
      {course.notReady.length > 0 && <NotReady course={course} />}
      {leftOut.length > 0 && (
        <section className="student-part" aria-labelledby="left-out-title">
          <h2 id="left-out-title">{say.leftOut.title}</h2>
          <LongList items={leftOut} most={5}>
            {(one) => <li key={`${one.courseUnit} ${one.activity}`}>{one.why}</li>}
          </LongList>
        </section>
      )}
      {course.setAside.length > 0 && <SetAside course={course} />}
    </>
  );
}

type MissingSkill = CourseView['notReady'][number]['missing'][number];

function NotReady({ course }: { readonly course: CourseView }) {
  const [observed, setObserved] = useState<MissingSkill | null>(null);
  const units = course.units.filter((unit) => course.notReady.some((one) => one.courseUnit === unit.id));
  return (
    <section className="student-part" aria-labelledby="not-ready-title">
      <h2 id="not-ready-title">{say.notReady.title}</h2>
      <ul className="plain-list">
        {units.map((unit) => {
          const here = course.notReady.filter((one) => one.courseUnit === unit.id);
          const way = here
            .flatMap((one) => one.way)
            .filter((step, i, all) => all.findIndex((other) => other.unit === step.unit) === i);
          const missing = here
            .flatMap((one) => one.missing)
            .filter((skill, i, all) => all.findIndex((other) => other.skill === skill.skill) === i);
          return (
            <li key={unit.id} className="apart">
              <h3>{unit.title}</h3>
              {here.map((one) => (
                <p key={one.sentence}>{one.sentence}</p>
              ))}
              {way.length === 0 ? (
                <p className="soft">{say.notReady.noWay}</p>
              ) : (
                <Button
                  onPress={() => void sendTogether(wayToCommands(course, unit, way), say.notReady.added)}
                >
                  {say.notReady.add(way.map((step) => step.title).join(', '))}
                </Button>
              )}
              <p className="soft">{say.notReady.known}</p>
              <ul className="plain-list">
                {missing.map((skill) => (
                  <li key={skill.skill}>
                    <Button kind="plain" onPress={() => setObserved(skill)}>
                      {sentenceCase(skill.title)}
                    </Button>
                  </li>
                ))}
              </ul>
            </li>
          );
        })}
      </ul>
      {observed && <ObserveForm course={course} skill={observed} onClose={() => setObserved(null)} />}
    </section>
  );
}

/** Gives the units of the way, in order, just before the unit that needs them. */
function wayToCommands(
  course: CourseView,
  unit: CourseView['units'][number],
  way: CourseView['notReady'][number]['way'],
): Step[] {
  const at = unitsOnStrand(course.units, unit.strand).findIndex((one) => one.id === unit.id);
  return way.map((step, i) => ({
    type: 'courseUnit.give',
    seen: course.revision,
    course: course.id,
    courseUnit: newId('course-unit'),
    unit: step.unit,
    strand: unit.strand,
    position: Math.max(0, at) + i,
  }));
}

function SetAside({ course }: { readonly course: CourseView }) {
  const send = useCommand();
  const format = useFormat();
  return (
    <section className="student-part" aria-labelledby="set-aside-title">
      <h2 id="set-aside-title">{say.setAside.title}</h2>
      <ul className="plain-list">
        {course.setAside.map((one) => (
          <li key={`${one.courseUnit} ${one.activity}`} className="apart-row">
            <span>
              <span className="apart-title">{one.title}</span>{' '}
              <span className="soft">
                {say.setAside.since(format.day(one.since, 'day'))}
                {one.backFrom ? `, ${say.setAside.until(format.day(one.backFrom, 'day'))}` : ''}
              </span>
            </span>
            <Button
              onPress={() =>
                void send({
                  type: 'activity.takeUp',
                  seen: course.revision,
                  course: course.id,
                  courseUnit: one.courseUnit,
                  activity: one.activity,
                })
              }
            >
              {say.setAside.takeUp}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
