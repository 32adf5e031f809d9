// One activity of a unit as it is taught from.

import { Link } from 'wouter';
import type { Activity, ActivityVariant, MaterialReference, SkillId } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { MarkdownText } from '../../components/markdown.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { materialAddress } from '../materials/material-address.ts';
import { stageSpan } from './stage-span.ts';

const says = words.units.unit;

export interface UnitActivityProps {
  readonly activity: Activity;
  /** From 1; null for an extension. */
  readonly number: number | null;
  readonly titleOf: (skill: SkillId) => string;
}

export function UnitActivity({ activity, number, titleOf }: UnitActivityProps) {
  const format = useFormat();
  const { minutes } = activity;
  return (
    <li className="unit-activity" id={activity.key}>
      <header className="unit-activity-head">
        {number !== null && (
          <span className="unit-number" aria-hidden="true">
            {number}
          </span>
        )}
        <h3>{activity.title}</h3>
        <p className="unit-minutes">
          {says.minutes(format.minutes(minutes.usual), minutes.shortest, minutes.longest)}
        </p>
      </header>
      <MarkdownText text={activity.howTo} />
      <dl className="unit-lines">
        {activity.develops.length > 0 && (
          <div>
            <dt>{says.develops}</dt>
            <dd>
              {activity.develops.map((skill, at) => (
                <span key={skill}>
                  {at > 0 && '; '}
                  <Link href={`/skills?skill=${encodeURIComponent(skill)}`}>
                    {sentenceCase(titleOf(skill))}
                  </Link>
                </span>
              ))}
            </dd>
          </div>
        )}
        {activity.bring.length > 0 && (
          <div>
            <dt>{says.bring}</dt>
            <dd>{activity.bring.join('; ')}</dd>
          </div>
        )}
        {activity.materials.length > 0 && (
          <div>
            <dt>{says.materials}</dt>
            <dd>
              <MaterialLinks materials={activity.materials} />
            </dd>
          </div>
        )}
        <div>
          <dt>{says.place}</dt>
          <dd>{words.units.characters[activity.character]}</dd>
        </div>
      </dl>
      {activity.variants.map((variant, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: variants are told apart by their place alone
        <Variant key={at} variant={variant} />
      ))}
    </li>
  );
}

function MaterialLinks({ materials }: { readonly materials: readonly MaterialReference[] }) {
  return materials.map((material, at) => (
    <span key={material.key}>
      {at > 0 && '; '}
      {material.spec === undefined ? (
        material.title
      ) : (
        <Link href={materialAddress(material.spec)}>{material.title}</Link>
      )}
      {material.takeHome !== undefined && (
        <span className="soft"> ({says.takeHomes[material.takeHome]})</span>
      )}
    </span>
  ));
}

function whomOf({ stages, ages }: ActivityVariant): string {
  const whom = [
    ...(stages ? [stageSpan(stages).toLowerCase()] : []),
    ...(ages ? [words.units.agesSuit(ages)] : []),
  ];
  return whom.length === 0 ? says.everyone : whom.join(', ');
}

function Variant({ variant }: { readonly variant: ActivityVariant }) {
  const format = useFormat();
  const { title, minutes, bring, howTo, materials = [] } = variant;
  const facts = [
    ...(title ? [title] : []),
    ...(minutes ? [says.minutes(format.minutes(minutes.usual), minutes.shortest, minutes.longest)] : []),
    ...(bring && bring.length > 0 ? [`${says.bring.toLowerCase()} ${bring.join('; ')}`] : []),
  ];
  return (
    <section className="unit-variant">
      <h4>{says.variant(whomOf(variant))}</h4>
      {facts.length > 0 && <p className="soft">{facts.join(' · ')}</p>}
      {howTo && <MarkdownText text={howTo} />}
      {materials.length > 0 && (
        <dl className="unit-lines">
          <div>
            <dt>{says.materials}</dt>
            <dd>
              <MaterialLinks materials={materials} />
            </dd>
          </div>
        </dl>
      )}
    </section>
  );
}
