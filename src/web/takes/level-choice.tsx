// Which skill a take shows, and at which level. The figures tell what was heard; the level is the teacher's to judge.

import type { Level, SkillId } from '#planning';
import { sentenceCase } from '../app/sentence-case.ts';
import { SelectField } from '../components/field.tsx';
import { LevelPicker } from '../components/level-picker.tsx';
import { words } from '../words/index.ts';

const say = words.takes.result;

/** A skill that an observation may be made of; `wanted` where a check of the work asks for a level. */
export interface ObservableSkill {
  readonly skill: SkillId;
  readonly title: string;
  readonly wanted: Level | null;
}

export interface LevelChoiceProps {
  readonly skills: readonly ObservableSkill[];
  readonly skill: string;
  readonly level: Level | null;
  readonly onChoose: (skill: string, level: Level | null) => void;
}

export function LevelChoice({ skills, skill, level, onChoose }: LevelChoiceProps) {
  const chosen = skills.find((one) => one.skill === skill);
  return (
    <>
      <h3>{say.observe}</h3>
      <p className="soft">{say.observeHelp}</p>
      {skills.length > 1 && (
        <SelectField
          label={say.skill}
          value={skill}
          onValue={(one) => onChoose(one, null)}
          options={skills.map((one) => ({ value: one.skill, label: sentenceCase(one.title) }))}
        />
      )}
      {chosen && (
        <LevelPicker
          label={sentenceCase(chosen.title)}
          level={level}
          onLevel={(one) => onChoose(skill, one)}
          {...(chosen.wanted === null ? {} : { wanted: chosen.wanted })}
        />
      )}
    </>
  );
}
