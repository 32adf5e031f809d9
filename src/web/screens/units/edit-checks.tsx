// The checks of a unit: a skill, the level at which one moves on, what to look or listen for.

import { Radio, RadioGroup } from 'react-aria-components';
import type { Check, Skill, SkillId } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { LevelNote } from '../../components/level-note.tsx';
import { words } from '../../words/index.ts';
import { EditListenFor } from './edit-listen-for.tsx';
import type { Editing } from './editing.ts';
import { FindingList } from './finding-list.tsx';
import {
  type CheckDraft,
  changeRow,
  emptyCheck,
  takeHandle,
  type UnitDraft,
  withoutRow,
} from './unit-draft.ts';
import '../../components/level-picker.css';

const says = words.units.editor;
const levels: readonly Check['level'][] = [1, 2, 3, 4];

/** The skills a check may ask for first: those the unit develops, then the others it involves. */
function skillsOf(draft: UnitDraft): readonly SkillId[] {
  const developed = [...draft.activities, ...draft.extensions].flatMap((one) => one.develops);
  return [...new Set([...developed, ...draft.alsoSkills])];
}

export function EditChecks({ editing }: { readonly editing: Editing }) {
  const { draft, edit } = editing;
  const offered = skillsOf(draft);
  const checked = new Set(draft.checks.map((check) => check.skill));
  const add = () =>
    edit((now) => {
      const [taken, fresh] = takeHandle(now);
      const skill = offered.find((one) => !checked.has(one)) ?? null;
      return { ...taken, checks: [...taken.checks, emptyCheck(fresh, skill)] };
    });
  return (
    <section className="form-part" aria-label={says.checks}>
      <h2>{says.checks}</h2>
      {draft.checks.length === 0 && <p className="faint">{says.noChecks}</p>}
      <ol className="editor-rows">
        {draft.checks.map((check, at) => (
          <li key={check.handle} className="editor-row">
            <EditCheck
              editing={editing}
              check={check}
              name={says.checkOf(at + 1)}
              offered={offered}
              onChange={(change) =>
                edit((now) => ({ ...now, checks: changeRow(now.checks, check.handle, change) }))
              }
              onRemove={() => edit((now) => ({ ...now, checks: withoutRow(now.checks, check.handle) }))}
            />
          </li>
        ))}
      </ol>
      <FindingList findings={draft.activities.length > 0 ? editing.findingsAt('checks') : []} />
      {editing.faultOf('checks') && <p className="fault">{editing.faultOf('checks')}</p>}
      <div>
        <Button onPress={add}>{says.addCheck}</Button>
      </div>
    </section>
  );
}

interface EditCheckProps {
  readonly editing: Editing;
  readonly check: CheckDraft;
  readonly name: string;
  readonly offered: readonly SkillId[];
  readonly onChange: (change: Partial<CheckDraft>) => void;
  readonly onRemove: () => void;
}

function EditCheck({ editing, check, name, offered, onChange, onRemove }: EditCheckProps) {
  const titleOf = (id: SkillId) => editing.skills.find((skill: Skill) => skill.id === id)?.title ?? id;
  // A skill that no activity develops any more stays chosen until the teacher chooses another.
  const choices = check.skill && !offered.includes(check.skill) ? [...offered, check.skill] : offered;
  return (
    <fieldset className="editor-check">
      <legend className="only-heard">{name}</legend>
      <SelectField<SkillId | ''>
        label={says.skill}
        value={check.skill ?? ''}
        onValue={(skill) => onChange({ skill: skill === '' ? null : skill })}
        options={[
          { value: '', label: says.chooseSkill },
          ...choices.map((id) => ({ value: id, label: sentenceCase(titleOf(id)) })),
        ]}
        fault={editing.faultOf(`${check.handle}.skill`)}
      />
      <div className="field">
        <span className="field-label">{says.level}</span>
        <RadioGroup
          className="level-picker editor-levels"
          aria-label={says.level}
          orientation="horizontal"
          value={String(check.level)}
          onChange={(chosen) => {
            const level = levels.find((one) => String(one) === chosen);
            if (level !== undefined) onChange({ level });
          }}
        >
          {levels.map((level) => (
            <Radio key={level} value={String(level)} className="level-choice">
              <LevelNote level={level} size={28} decorative />
              <span>{words.levels[level].name}</span>
            </Radio>
          ))}
        </RadioGroup>
      </div>
      <TextField
        label={says.lookFor}
        rows={2}
        value={check.lookFor}
        onValue={(lookFor) => onChange({ lookFor })}
        fault={editing.faultOf(`${check.handle}.lookFor`)}
      />
      <EditListenFor
        editing={editing}
        handle={check.handle}
        listenFor={check.listenFor}
        onChange={(listenFor) => onChange({ listenFor })}
      />
      <FindingList findings={editing.findingsAt(`check:${editing.keyOf(check.handle)}`)} />
      <div>
        <Button kind="plain" aria-label={says.removeOf(name)} onPress={onRemove}>
          {says.remove}
        </Button>
      </div>
    </fieldset>
  );
}
