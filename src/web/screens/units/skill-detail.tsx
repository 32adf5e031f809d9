// One skill: what it is, what it rests on, what rests on it, and which units teach it.

import { useState } from 'react';
import { Link } from 'wouter';
import type { SkillMapView } from '#contract';
import type { Skill, SkillId } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import { SkillDialog } from './skill-dialog.tsx';
import { SkillDrawing } from './skill-drawing.tsx';

const says = words.units.skills;

export interface SkillDetailProps {
  readonly skill: SkillMapView['skills'][number];
  readonly skills: SkillMapView['skills'];
  readonly onChoose: (skill: SkillId) => void;
}

export function SkillDetail({ skill, skills, onChoose }: SkillDetailProps) {
  const send = useCommand();
  const [changing, setChanging] = useState(false);
  const rests = skills.filter((one) => skill.restsOn.includes(one.id));
  const supports = skills.filter((one) => one.restsOn.includes(skill.id));
  return (
    <section aria-labelledby="skill-title">
      <h2 id="skill-title">{sentenceCase(skill.title)}</h2>
      <p className="faint">
        {areaNames[skill.area]}, {words.stageNames[skill.stage].toLowerCase()}
        {skill.ongoing && `, ${says.ongoing}`}
      </p>
      {skill.description !== '' && skill.description !== skill.title && <p>{skill.description}</p>}
      <SkillDrawing skills={skills} chosen={skill} onChoose={onChoose} />
      <div className="skills-words">
        <SkillLinks title={says.rests} skills={rests} />
        <SkillLinks title={says.supports} skills={supports} />
        <div>
          <h3>{says.taughtBy}</h3>
          {skill.taughtBy.length === 0 ? (
            <p className="soft">
              {says.taughtByNone} <Link href="/unit/new">{says.write}</Link>
            </p>
          ) : (
            <ul>
              {skill.taughtBy.map((unit) => (
                <li key={unit.unit}>
                  <Link href={`/unit/${unit.unit}`}>{unit.title}</Link>
                </li>
              ))}
            </ul>
          )}
        </div>
      </div>
      <p className="skills-deeds no-print">
        <Button onPress={() => setChanging(true)}>{says.change}</Button>
        <Button kind="plain" onPress={() => void send({ type: 'skill.remove', skill: skill.id })}>
          {says.remove}
        </Button>
      </p>
      {changing && <SkillDialog known={skill} begin={skill} onClose={() => setChanging(false)} />}
    </section>
  );
}

function SkillLinks({ title, skills }: { readonly title: string; readonly skills: readonly Skill[] }) {
  return (
    <div>
      <h3>{title}</h3>
      {skills.length === 0 ? (
        <p className="soft">{says.nothing}</p>
      ) : (
        <ul>
          {skills.map((skill) => (
            <li key={skill.id}>
              <Link href={`/skills?skill=${encodeURIComponent(skill.id)}`}>{sentenceCase(skill.title)}</Link>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
