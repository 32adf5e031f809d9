// A unit as a page to teach from.

import { useMemo } from 'react';
import { useLocation } from 'wouter';
import type { UnitView } from '#contract';
import { compareUnits, formatUnitDifference, type Skill, type SkillId, type UnitDocument } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { Empty } from '../../components/empty.tsx';
import { LevelNote } from '../../components/level-note.tsx';
import { Loaded } from '../../components/loading.tsx';
import { MarkdownText } from '../../components/markdown.tsx';
import { Page } from '../../components/page.tsx';
import { ShownBy } from '../../components/shown-by.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { useSkills, useStudio, useUnit, useUnits } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import { estimateLessons } from './estimate-lessons.ts';
import { FindingList } from './finding-list.tsx';
import { stageSpan } from './stage-span.ts';
import { UnitActions } from './unit-actions.tsx';
import { UnitActivity } from './unit-activity.tsx';
import { UnitContents } from './unit-contents.tsx';
import { UnitMargin } from './unit-margin.tsx';
import '../../components/form.css';
import './editor.css';
import './unit.css';

const says = words.units.unit;

export interface UnitPageProps {
  readonly id: string;
  /** An earlier version; null for the newest. */
  readonly version: number | null;
}

export function UnitPage({ id, version }: UnitPageProps) {
  const view = useUnit(id, version ?? undefined);
  const newest = useUnit(version === null ? null : id);
  const paper = useStudio().data?.paper ?? 'A4';
  const retired = useUnits().data?.units.find((unit) => unit.id === id)?.retired ?? false;
  const unit = view.data?.document;
  // What was loaded before stays in the cache, so a unit that is gone would still be shown.
  if (view.error?.kind === 'NotFound') {
    return (
      <Page title={says.title}>
        <Empty sentence={says.gone} action={<ButtonLink to="/units">{says.toUnits}</ButtonLink>} />
      </Page>
    );
  }
  return (
    <Page
      title={unit?.title ?? says.title}
      lead={
        unit && (
          <span className="unit-goal">
            {says.theStudent} {words.units.goal(unit.goal)}
          </span>
        )
      }
      actions={unit && version === null ? <UnitActions id={unit.id} retired={retired} /> : null}
    >
      <Loaded view={view}>
        {(data) => (
          <article className={`unit unit-${paper.toLowerCase()}`}>
            {retired && <p className="unit-remark">{says.isRetired}</p>}
            {newest.data && newest.data.document.version !== data.document.version && (
              <Older unit={data.document} newest={newest.data.document} />
            )}
            <UnitText view={data} />
          </article>
        )}
      </Loaded>
    </Page>
  );
}

function Older({ unit, newest }: { readonly unit: UnitDocument; readonly newest: UnitDocument }) {
  const send = useCommand();
  const [, navigate] = useLocation();
  const sentences = compareUnits(unit, newest).map(formatUnitDifference);
  return (
    <section className="unit-remark no-print">
      <p>{says.isOlder(unit.version, newest.version)}</p>
      <h2>{says.sinceThen}</h2>
      {sentences.length === 0 ? (
        <p className="soft">{says.noDifference}</p>
      ) : (
        <ul className="editor-differences">
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <p className="form-row">
        <ButtonLink to={`/unit/${unit.id}`}>{says.toNewest}</ButtonLink>
        {sentences.length > 0 && (
          <Button
            kind="plain"
            onPress={async () => {
              if (await send({ type: 'unit.save', seenVersion: newest.version, document: unit }))
                navigate(`/unit/${unit.id}`);
            }}
          >
            {says.bringBack}
          </Button>
        )}
      </p>
    </section>
  );
}

function UnitText({ view }: { readonly view: UnitView }) {
  const { document: unit } = view;
  const skills = useSkills().data?.skills;
  const skillsById = useMemo(
    () => new Map<SkillId, Skill>((skills ?? []).map((skill) => [skill.id, skill])),
    [skills],
  );
  const titleOf = (id: SkillId) =>
    skillsById.get(id)?.title ?? id.slice('skill:'.length).replaceAll('-', ' ');
  return (
    <>
      <UnitFacts unit={unit} />
      <div className="unit-columns">
        <div className="unit-text">
          {unit.about !== '' && (
            <section className="unit-about">
              <h2 className="only-heard">{says.about}</h2>
              <MarkdownText text={unit.about} />
            </section>
          )}
          <FindingList findings={view.findings} />
          <UnitContents unit={unit} />
          <section>
            <h2 className="unit-section">{says.activities}</h2>
            <ol>
              {unit.activities.map((activity, at) => (
                <UnitActivity key={activity.key} activity={activity} number={at + 1} titleOf={titleOf} />
              ))}
            </ol>
          </section>
          {unit.checks.length > 0 && (
            <section>
              <h2 className="unit-section">{says.checks}</h2>
              <ul className="unit-checks-list">
                {unit.checks.map((check) => (
                  <li key={check.key}>
                    <LevelNote level={check.level} size={30} decorative />
                    <div>
                      <h3>{sentenceCase(titleOf(check.skill))}</h3>
                      <p className="faint">{says.check(words.levels[check.level].name.toLowerCase())}</p>
                      <MarkdownText text={check.lookFor} />
                      <ShownBy listenFor={check.listenFor ?? []} />
                    </div>
                  </li>
                ))}
              </ul>
            </section>
          )}
          {unit.extensions.length > 0 && (
            <section>
              <h2 className="unit-section">{says.extensions}</h2>
              <p className="soft">{says.extensionsLead}</p>
              <ul>
                {unit.extensions.map((activity) => (
                  <UnitActivity key={activity.key} activity={activity} number={null} titleOf={titleOf} />
                ))}
              </ul>
            </section>
          )}
        </div>
        <UnitMargin view={view} skillsById={skillsById} />
      </div>
    </>
  );
}

function UnitFacts({ unit }: { readonly unit: UnitDocument }) {
  const format = useFormat();
  const minutes = unit.activities.reduce((sum, activity) => sum + activity.minutes.usual, 0);
  const families = Object.entries(words.families)
    .filter(([family]) => unit.families.includes(family))
    .map(([, name]) => name.toLowerCase());
  const others = unit.families.filter((family) => !(family in words.families));
  const instruments = [...families, ...others];
  return (
    <dl className="unit-facts">
      <div>
        <dt>{words.units.area}</dt>
        <dd>{areaNames[unit.area]}</dd>
      </div>
      <div>
        <dt>{says.suits}</dt>
        <dd>
          {stageSpan(unit.stages)}, {words.units.agesSuit(unit.ages)};{' '}
          {instruments.length === 0 ? says.anyInstrument : instruments.join(', ')}
        </dd>
      </div>
      <div>
        <dt>{says.usual}</dt>
        <dd title={says.lessonsHelp}>
          {words.units.work(format.minutes(minutes), unit.activities.length)};{' '}
          {says.lessons(estimateLessons(minutes, 30), estimateLessons(minutes, 45))}
        </dd>
      </div>
    </dl>
  );
}
