// What stands beside a unit: its skills and what they rest on, its neighbours, who uses it, its versions.

import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { UnitView } from '#contract';
import type { Id } from '#core';
import type { Skill, SkillId, UnitId } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { useStudents } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';

const says = words.units.unit;
const skillAt = (id: SkillId) => `/skills?skill=${encodeURIComponent(id)}`;

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="unit-part">
      <h2>{title}</h2>
      {children}
    </section>
  );
}

export interface UnitMarginProps {
  readonly view: UnitView;
  readonly skillsById: ReadonlyMap<SkillId, Skill>;
}

export function UnitMargin({ view, skillsById }: UnitMarginProps) {
  const { document } = view;
  const titleOf = (id: SkillId) =>
    skillsById.get(id)?.title ?? id.slice('skill:'.length).replaceAll('-', ' ');
  const developed = new Set([...document.activities, ...document.extensions].flatMap((one) => one.develops));
  const needed = [
    ...new Set(
      [...developed].flatMap((id) => skillsById.get(id)?.restsOn ?? []).filter((id) => !developed.has(id)),
    ),
  ];
  return (
    <aside className="unit-margin">
      {document.skills.length > 0 && (
        <Part title={says.skills}>
          <ul className="unit-skills">
            {document.skills.map((id) => {
              const skill = skillsById.get(id);
              return (
                <li key={id}>
                  <Link href={skillAt(id)}>{sentenceCase(titleOf(id))}</Link>
                  {skill?.ongoing && <span className="faint"> {says.ongoing}</span>}
                  {skill && skill.restsOn.length > 0 && (
                    <span className="unit-rests">
                      {says.rests} {skill.restsOn.map(titleOf).join('; ')}
                    </span>
                  )}
                </li>
              );
            })}
          </ul>
        </Part>
      )}
      {needed.length > 0 && (
        <Part title={says.needed}>
          <ul>
            {needed.map((id) => (
              <li key={id}>
                <Link href={skillAt(id)}>{sentenceCase(titleOf(id))}</Link>
              </li>
            ))}
          </ul>
        </Part>
      )}
      <Units title={says.before} units={view.before} />
      <Units title={says.after} units={view.after} />
      <UsedBy view={view} />
    </aside>
  );
}

interface UnitsProps {
  readonly title: string;
  readonly units: readonly { readonly unit: UnitId; readonly title: string }[];
}

function Units({ title, units }: UnitsProps) {
  if (units.length === 0) return null;
  return (
    <Part title={title}>
      <ul>
        {units.map((one) => (
          <li key={one.unit}>
            <Link href={`/unit/${one.unit}`}>{one.title}</Link>
          </li>
        ))}
      </ul>
    </Part>
  );
}

function UsedBy({ view }: { readonly view: UnitView }) {
  const people = useStudents().data;
  const studentOn = (course: Id<'course'>): Id<'student'> | undefined =>
    people?.students.find((one) => one.courses.includes(course))?.id ??
    people?.groups.find((one) => one.courses.includes(course))?.members[0];
  return (
    <div className="no-print">
      <Part title={says.usedBy}>
        {view.usedBy.length === 0 && <p className="soft">{says.usedByNone}</p>}
        <ul>
          {view.usedBy.map((one) => {
            const student = studentOn(one.course);
            return (
              <li key={one.courseUnit}>
                {student ? (
                  <Link href={`/student/${student}?course=${one.course}`}>{one.learner}</Link>
                ) : (
                  one.learner
                )}
                <span className="faint"> {says.usesVersion(one.version)}</span>
              </li>
            );
          })}
        </ul>
      </Part>
      <Versions view={view} />
    </div>
  );
}

function Versions({ view }: { readonly view: UnitView }) {
  const format = useFormat();
  const { id, version: shown } = view.document;
  const newest = view.versions[0]?.version;
  return (
    <Part title={says.versions}>
      <ul>
        {view.versions.map(({ version, savedAt }) => (
          <li key={version}>
            <Link
              href={`/unit/${id}${version === newest ? '' : `?version=${version}`}`}
              aria-current={version === shown ? 'true' : undefined}
            >
              {says.version(version)}
            </Link>
            <span className="faint">
              {' '}
              {format.moment(savedAt)}
              {version === newest && `, ${says.newestVersion}`}
            </span>
          </li>
        ))}
      </ul>
    </Part>
  );
}
