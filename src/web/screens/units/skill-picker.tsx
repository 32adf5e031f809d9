// Skills chosen one after another from the map by words.

import { useId } from 'react';
import type { Skill, SkillId } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { words } from '../../words/index.ts';
import { SkillFinder } from './skill-finder.tsx';
import './skill-picker.css';

const says = words.units.editor;

export interface SkillPickerProps {
  readonly label: string;
  readonly help?: string;
  readonly fault?: string | null;
  /** What choosing does, heard after the label: "Add a skill to Walk and clap". */
  readonly addLabel: string;
  readonly chosen: readonly SkillId[];
  readonly skills: readonly Skill[];
  readonly onChosen: (chosen: readonly SkillId[]) => void;
  /** Marks the first as the main one. */
  readonly ordered?: boolean;
  /** Told the words of a skill that is not in the map; absent where none can be written. */
  readonly onNew?: (title: string) => void;
}

export function SkillPicker(props: SkillPickerProps) {
  const { label, help, fault, addLabel, chosen, skills, onChosen, ordered = false, onNew } = props;
  const id = useId();
  const titleOf = (skill: SkillId) => skills.find((one) => one.id === skill)?.title ?? skill;
  const described = [help ? `${id}-help` : '', fault ? `${id}-fault` : ''].filter(Boolean).join(' ');
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
        <span className="only-heard">, {addLabel}</span>
      </label>
      {chosen.length > 0 && (
        <ul className="skill-chosen" aria-label={label}>
          {chosen.map((skill, at) => (
            <li key={skill}>
              <span>
                {sentenceCase(titleOf(skill))}
                {ordered && at === 0 && chosen.length > 1 && <span className="faint"> {says.mainSkill}</span>}
              </span>
              <Button
                kind="plain"
                aria-label={says.removeSkill(titleOf(skill))}
                onPress={() => onChosen(chosen.filter((one) => one !== skill))}
              >
                {words.frame.remove}
              </Button>
            </li>
          ))}
        </ul>
      )}
      <SkillFinder
        inputId={id}
        describedBy={described || undefined}
        invalid={Boolean(fault)}
        skills={skills.filter((skill) => !chosen.includes(skill.id))}
        onChoose={(skill) => onChosen([...chosen, skill])}
        onNew={onNew}
      />
      {help && (
        <span className="field-help" id={`${id}-help`}>
          {help}
        </span>
      )}
      {fault && (
        <span className="field-fault" id={`${id}-fault`} role="alert">
          {fault}
        </span>
      )}
    </div>
  );
}
