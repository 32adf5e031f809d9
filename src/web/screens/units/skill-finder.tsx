// A field that finds skills by words and offers them beneath: a combobox whose list opens in place, so that nothing else
// of the page is hidden from assistive technology while it is open.

import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import type { Skill, SkillId } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import { findNearSkills } from './find-near-skills.ts';
import { findSkills } from './find-skills.ts';

const says = words.units.editor;
/** More would be walked through, not read. */
const mostShown = 40;

export interface SkillFinderProps {
  readonly inputId: string;
  readonly describedBy: string | undefined;
  readonly invalid: boolean;
  /** What is offered. */
  readonly skills: readonly Skill[];
  readonly onChoose: (skill: SkillId) => void;
  /** Told the words of a skill that is not in the map; absent where none can be written. */
  readonly onNew: ((title: string) => void) | undefined;
}

export function SkillFinder({ inputId, describedBy, invalid, skills, onChoose, onNew }: SkillFinderProps) {
  const id = useId();
  const list = useRef<HTMLDivElement>(null);
  const [text, setText] = useState('');
  const [open, setOpen] = useState(false);
  const [active, setActive] = useState(-1);
  const withAll = findSkills(skills, text).slice(0, mostShown);
  const isNear = withAll.length === 0;
  // A skill worded otherwise is offered before it is written a second time.
  const found = isNear ? findNearSkills(skills, text) : withAll;
  const count = found.length + (onNew ? 1 : 0);
  const optionId = (at: number) => `${id}-${at}`;
  const isOpen = open && count > 0;

  useEffect(() => {
    if (isOpen && active >= 0)
      list.current?.querySelectorAll('[role=option]')[active]?.scrollIntoView({ block: 'nearest' });
  }, [active, isOpen]);

  function close() {
    setOpen(false);
    setActive(-1);
  }
  function choose(at: number) {
    const skill = found[at];
    setText('');
    close();
    if (skill) onChoose(skill.id);
    else onNew?.(text.trim());
  }
  function onKeyDown(event: KeyboardEvent) {
    switch (event.key) {
      case 'ArrowDown':
      case 'ArrowUp': {
        event.preventDefault();
        if (count === 0) return;
        const step = event.key === 'ArrowDown' ? 1 : -1;
        setActive(isOpen && active >= 0 ? (active + step + count) % count : step === 1 ? 0 : count - 1);
        setOpen(true);
        return;
      }
      case 'Enter':
        // Never sends the form it stands in.
        event.preventDefault();
        if (isOpen && active >= 0) choose(active);
        return;
      case 'Escape':
        if (!isOpen) return;
        event.preventDefault();
        event.stopPropagation();
        close();
        return;
    }
  }

  return (
    <div className="skill-finder">
      <input
        id={inputId}
        className="field-input"
        role="combobox"
        aria-autocomplete="list"
        aria-expanded={isOpen}
        aria-controls={isOpen ? `${id}-list` : undefined}
        aria-activedescendant={isOpen && active >= 0 ? optionId(active) : undefined}
        aria-describedby={describedBy}
        aria-invalid={invalid || undefined}
        autoComplete="off"
        placeholder={says.skillPlaceholder}
        value={text}
        onChange={(event) => {
          setText(event.target.value);
          setActive(-1);
          setOpen(true);
        }}
        onClick={() => setOpen(true)}
        onBlur={close}
        onKeyDown={onKeyDown}
      />
      {isOpen && (
        <div
          className="finder-list"
          id={`${id}-list`}
          ref={list}
          role="listbox"
          aria-label={says.skillsFound}
          // The field would lose the focus, and with it the list.
          onPointerDown={(event) => event.preventDefault()}
        >
          {isNear && found.length > 0 && (
            <p className="finder-near faint" aria-hidden="true">
              {says.nearSkills}
            </p>
          )}
          {found.map((skill, at) => (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the field has the keys
            // biome-ignore lint/a11y/useFocusableInteractive: the field keeps the focus
            <div
              key={skill.id}
              id={optionId(at)}
              role="option"
              aria-selected={at === active}
              className="skill-option"
              onClick={() => choose(at)}
            >
              {sentenceCase(skill.title)}{' '}
              <span className="faint">
                {areaNames[skill.area]}, {words.stageNames[skill.stage].toLowerCase()}
              </span>
            </div>
          ))}
          {onNew && (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the field has the keys
            // biome-ignore lint/a11y/useFocusableInteractive: the field keeps the focus
            <div
              id={optionId(found.length)}
              role="option"
              aria-selected={active === found.length}
              className="skill-option skill-new"
              onClick={() => choose(found.length)}
            >
              {says.newSkill(text.trim())}
            </div>
          )}
        </div>
      )}
      <span className="only-heard" role="status">
        {!isOpen
          ? ''
          : isNear && found.length > 0
            ? says.skillsNear(found.length)
            : says.skillsCount(found.length)}
      </span>
    </div>
  );
}
