// Skills chosen one after another from the map by words.

import { useState } from 'react';
import { ComboBox, Input, Label, ListBox, ListBoxItem, Popover, Text } from 'react-aria-components';
import type { Skill, SkillId } from '#planning';
import { Button } from '../../components/button.tsx';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import { findSkills } from './find-skills.ts';
import './skill-picker.css';

const says = words.units.editor;
const newSkill = 'new';
/** More would be walked through, not read. */
const mostShown = 40;

export interface SkillPickerProps {
  readonly label: string;
  readonly help?: string;
  readonly fault?: string | null;
  /** The name of the field that adds one. */
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
  const [text, setText] = useState('');
  const titleOf = (id: SkillId) => skills.find((skill) => skill.id === id)?.title ?? id;
  const found = findSkills(
    skills.filter((skill) => !chosen.includes(skill.id)),
    text,
  ).slice(0, mostShown);
  const add = (id: SkillId) => {
    setText('');
    if (!chosen.includes(id)) onChosen([...chosen, id]);
  };
  return (
    <div className="field skill-picker">
      <span className="field-label">{label}</span>
      {chosen.length > 0 && (
        <ul className="skill-chosen" aria-label={label}>
          {chosen.map((id, at) => (
            <li key={id}>
              <span>
                {titleOf(id)}
                {ordered && at === 0 && chosen.length > 1 && <span className="faint"> {says.mainSkill}</span>}
              </span>
              <Button
                kind="plain"
                aria-label={says.removeSkill(titleOf(id))}
                onPress={() => onChosen(chosen.filter((one) => one !== id))}
              >
                {words.frame.remove}
              </Button>
            </li>
          ))}
        </ul>
      )}
      <ComboBox
        className="skill-find"
        inputValue={text}
        onInputChange={setText}
        selectedKey={null}
        onSelectionChange={(key) => {
          if (key === newSkill) {
            setText('');
            onNew?.(text.trim());
          } else if (typeof key === 'string' && found.some((skill) => skill.id === key)) add(key as SkillId);
        }}
        menuTrigger="focus"
        allowsCustomValue
        allowsEmptyCollection
        isInvalid={Boolean(fault)}
      >
        <Label className="only-heard">{addLabel}</Label>
        <Input className="field-input" placeholder={says.skillPlaceholder} />
        {help && (
          <Text slot="description" className="field-help">
            {help}
          </Text>
        )}
        {fault && (
          <Text slot="errorMessage" className="field-fault">
            {fault}
          </Text>
        )}
        <Popover className="skill-list" placement="bottom start">
          <ListBox renderEmptyState={() => <p className="skill-none">{says.noSkillFound}</p>}>
            {found.map((skill) => (
              <ListBoxItem key={skill.id} id={skill.id} textValue={skill.title} className="skill-option">
                <Text slot="label">{skill.title}</Text>
                <Text slot="description" className="faint">
                  {areaNames[skill.area]}, {words.stageNames[skill.stage].toLowerCase()}
                </Text>
              </ListBoxItem>
            ))}
            {onNew && (
              <ListBoxItem
                id={newSkill}
                textValue={says.newSkill(text.trim())}
                className="skill-option skill-new"
              >
                {says.newSkill(text.trim())}
              </ListBoxItem>
            )}
          </ListBox>
        </Popover>
      </ComboBox>
    </div>
  );
}
