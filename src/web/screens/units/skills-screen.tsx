// The skill map: all skills by area and stage, and what rests on what around the chosen one.

import { useMemo, useState } from 'react';
import { Link, useSearchParams } from 'wouter';
import type { SkillMapView } from '#contract';
import { areas, type SkillId, stages } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { Empty } from '../../components/empty.tsx';
import { TextField } from '../../components/field.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useSkills } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import { findNearSkills } from './find-near-skills.ts';
import { findSkills } from './find-skills.ts';
import { mostRestedOn } from './most-rested-on.ts';
import { SkillDetail } from './skill-detail.tsx';
import { SkillDialog } from './skill-dialog.tsx';
import './skills.css';

const says = words.units.skills;

type Skills = SkillMapView['skills'];

export function SkillsScreen() {
  const view = useSkills();
  const [adding, setAdding] = useState(false);
  const [search, setSearch] = useSearchParams();
  const wanted = search.get('skill') ?? '';
  const choose = (skill: SkillId) => setSearch({ skill });
  const add = (
    <Button kind="primary" onPress={() => setAdding(true)}>
      {says.add}
    </Button>
  );
  return (
    <Page title={says.title} lead={says.lead} actions={view.data?.skills.length ? add : null}>
      <Loaded view={view}>
        {({ skills }) =>
          skills.length === 0 ? (
            <Empty sentence={says.none} action={add} />
          ) : (
            <SkillMap skills={skills} wanted={wanted} onChoose={choose} />
          )
        }
      </Loaded>
      {adding && (
        <SkillDialog
          known={null}
          begin={{ title: '', area: 'technique', stage: 'beginner' }}
          onClose={(skill) => {
            setAdding(false);
            if (skill) choose(skill);
          }}
        />
      )}
    </Page>
  );
}

interface SkillMapProps {
  readonly skills: Skills;
  readonly wanted: string;
  readonly onChoose: (skill: SkillId) => void;
}

function SkillMap({ skills, wanted, onChoose }: SkillMapProps) {
  const [text, setText] = useState('');
  const chosen = skills.find((skill) => skill.id === wanted) ?? null;
  const shown = useMemo(() => chosen ?? mostRestedOn(skills), [chosen, skills]);
  const withAll = useMemo(() => findSkills(skills, text), [skills, text]);
  const isNear = withAll.length === 0;
  // Who searches says it seldom in the map's own words.
  const found = useMemo(
    () => new Set(isNear ? findNearSkills(skills, text) : withAll),
    [skills, text, withAll, isNear],
  );
  return (
    <div className="skills-columns">
      <div className="skills-list">
        <div className="skills-find no-print">
          <TextField
            label={says.find}
            labelHidden
            type="search"
            placeholder={says.findPlaceholder}
            value={text}
            onValue={setText}
          />
          <p className="faint" role="status">
            {says.count(found.size)}
          </p>
        </div>
        {isNear && (
          <p className="soft skills-near">{found.size === 0 ? says.noneFound(text) : says.nearFound(text)}</p>
        )}
        {areas.map((area) => {
          const inArea = skills.filter((skill) => skill.area === area && found.has(skill));
          return inArea.length === 0 ? null : (
            <section key={area} className="skills-area" aria-label={areaNames[area]}>
              <h2>{areaNames[area]}</h2>
              {stages.map((stage) => {
                const here = inArea.filter((skill) => skill.stage === stage);
                return here.length === 0 ? null : (
                  <div key={stage} className="skills-stage">
                    <h3>{words.stageNames[stage]}</h3>
                    <ul>
                      {here.map((skill) => (
                        <li key={skill.id}>
                          <Link
                            href={`/skills?skill=${encodeURIComponent(skill.id)}`}
                            aria-current={skill.id === wanted ? 'true' : undefined}
                          >
                            {sentenceCase(skill.title)}
                          </Link>
                          {skill.ongoing && <span className="faint"> {says.ongoing}</span>}
                        </li>
                      ))}
                    </ul>
                  </div>
                );
              })}
            </section>
          );
        })}
      </div>
      <div className="skills-detail" data-chosen={chosen !== null}>
        {!chosen && <p className="soft skills-begin">{says.chooseOne}</p>}
        {shown && <SkillDetail skill={shown} skills={skills} onChoose={onChoose} />}
      </div>
    </div>
  );
}
