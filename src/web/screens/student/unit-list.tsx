import { useState } from 'react';
import { Link } from 'wouter';
import type { CourseUnitView, CourseView } from '#contract';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { inkOf } from '../../components/ink.ts';
import { LevelNote } from '../../components/level-note.tsx';
import { ShownBy } from '../../components/shown-by.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { isOver } from '../../score/is-over.ts';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import { unitsOnStrand } from './strand-order.ts';
import { UnitPlace } from './unit-place.tsx';

const say = words.student.units;

/** The units of the course by strand, with what is done of each and how its checks stand. */
export function UnitList({ course, onGive }: { readonly course: CourseView; readonly onGive: () => void }) {
  const [placing, setPlacing] = useState<CourseUnitView | null>(null);
  return (
    <section className="student-part" aria-labelledby="units-title">
      <header className="student-part-head">
        <h2 id="units-title">{say.title}</h2>
        {!isOver(course) && <Button onPress={onGive}>{say.give}</Button>}
      </header>
      {course.units.length === 0 && <p className="soft">{isOver(course) ? say.emptyEnded : say.empty}</p>}
      {course.strands.map((strand) => {
        const units = unitsOnStrand(course.units, strand.id);
        return units.length === 0 ? null : (
          <div key={strand.id} className="unit-strand">
            <h3>
              <svg width="26" height="12" aria-hidden="true" focusable="false">
                <rect
                  x="1"
                  y="1"
                  width="24"
                  height="10"
                  fill={`url(#${inkOf(strand.ink).texture})`}
                  stroke={inkOf(strand.ink).line}
                />
              </svg>
              {strand.name}
            </h3>
            <ol>
              {units.map((unit) => (
                <UnitRow
                  key={unit.id}
                  unit={unit}
                  strandInk={inkOf(strand.ink).line}
                  onPlace={() => setPlacing(unit)}
                />
              ))}
            </ol>
          </div>
        );
      })}
      {placing && <UnitPlace course={course} unit={placing} onClose={() => setPlacing(null)} />}
    </section>
  );
}

function UnitRow({
  unit,
  strandInk,
  onPlace,
}: {
  readonly unit: CourseUnitView;
  readonly strandInk: string;
  readonly onPlace: () => void;
}) {
  const format = useFormat();
  const remarks = [areaNames[unit.area], say.status[unit.status]];
  if (unit.notBefore) remarks.push(say.notBefore(format.day(unit.notBefore, 'day')));
  if (unit.notAfter) remarks.push(say.notAfter(format.day(unit.notAfter, 'day')));
  if (unit.adapted) remarks.push(say.adapted);
  if (unit.libraryVersion === null) remarks.push(say.gone);
  else if (unit.libraryVersion > unit.version) remarks.push(say.newer(unit.libraryVersion));
  return (
    <li className="unit-row">
      <div className="unit-row-head">
        <p>
          <Link href={`/unit/${unit.unit}`} className="unit-row-title">
            {unit.title}
          </Link>
          <span className="faint">{remarks.join(' · ')}</span>
        </p>
        <span className="unit-row-deeds">
          <Button kind="plain" aria-label={say.change(unit.title)} onPress={onPlace}>
            {say.order}
          </Button>
          <ButtonLink to={`/unit/${unit.unit}?copy=${unit.id}`} kind="plain">
            {say.adapt}
            <span className="only-heard"> {unit.title}</span>
          </ButtonLink>
        </span>
      </div>
      <p className="soft">{say.goal(unit.goal)}</p>
      <ShareLine unit={unit} ink={strandInk} />
      {unit.checks.length > 0 && <Checks unit={unit} />}
    </li>
  );
}

/** The unit's checks: their noteheads at once, their words when opened. */
function Checks({ unit }: { readonly unit: CourseUnitView }) {
  const reached = unit.checks.filter((check) => check.level !== null && check.level >= check.wanted).length;
  return (
    <details className="unit-checks">
      <summary>
        {unit.checks.map((check) => (
          <LevelNote key={check.skill + check.lookFor} level={check.level} size={20} decorative />
        ))}
        <span>{say.reached(reached, unit.checks.length)}</span>
      </summary>
      <ul>
        {unit.checks.map((check) => (
          <li key={check.skill + check.lookFor}>
            <LevelNote level={check.level} size={22} />
            <span>
              {say.check(sentenceCase(check.title), words.levels[check.wanted].name.toLowerCase())}
              <span className="faint"> {check.lookFor}</span> <ShownBy listenFor={check.listenFor} />
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** A line inked as far as the unit is done, divided where one activity gives way to the next. */
function ShareLine({ unit, ink }: { readonly unit: CourseUnitView; readonly ink: string }) {
  const format = useFormat();
  const count = Math.max(1, unit.activities.length);
  return (
    <div className="unit-share">
      <svg viewBox="0 0 240 12" width="240" height="12" aria-hidden="true" focusable="false">
        <line className="unit-share-line" x1="0" x2="240" y1="6" y2="6" />
        {unit.activities.map((activity, i) => {
          const x = (240 / count) * i;
          const width = 240 / count - 3;
          return (
            <g key={activity.activity}>
              <title>{activity.title}</title>
              <rect className="unit-share-frame" x={x + 0.5} y="2.5" width={width} height="7" stroke={ink} />
              <rect x={x + 0.5} y="2.5" width={width * activity.share} height="7" fill={ink} />
            </g>
          );
        })}
      </svg>
      <span>{say.share(format.share(unit.share))}</span>
      <span className="faint">
        {unit.activities
          .map((activity) => (activity.setAside ? `${activity.title} (${say.setAside})` : activity.title))
          .join(' · ')}
      </span>
    </div>
  );
}
