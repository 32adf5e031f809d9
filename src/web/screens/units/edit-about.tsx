// What a unit is: title, area, goal, about; whom it suits; what it also involves.

import { areas } from '#planning';
import { SelectField, TextField } from '../../components/field.tsx';
import { Tick } from '../../components/tick.tsx';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import type { Editing } from './editing.ts';
import { FindingList } from './finding-list.tsx';
import { PickSkills } from './pick-skills.tsx';
import { AgeFields, StageTicks } from './suits-fields.tsx';
import type { UnitDraft } from './unit-draft.ts';

const says = words.units.editor;

export function EditAbout({ editing, isNew }: { readonly editing: Editing; readonly isNew: boolean }) {
  const { draft, edit, faultOf } = editing;
  const set = (change: Partial<UnitDraft>) => edit((now) => ({ ...now, ...change }));
  return (
    <section className="form-part">
      <div className="form-row form-top">
        <div className="field field-broad">
          <TextField
            label={says.title}
            help={says.titleHelp}
            value={draft.title}
            onValue={(title) => set({ title })}
            fault={faultOf('title')}
            required
            autoFocus={isNew}
          />
        </div>
        <SelectField
          label={says.area}
          value={draft.area}
          onValue={(area) => set({ area })}
          options={areas.map((area) => ({ value: area, label: areaNames[area] }))}
        />
      </div>
      <TextField
        label={says.goal}
        placeholder={says.goalPlaceholder}
        value={draft.goal}
        onValue={(goal) => set({ goal })}
        fault={faultOf('goal')}
        required
      />
      <TextField
        label={says.about}
        help={says.aboutHelp}
        rows={3}
        value={draft.about}
        onValue={(about) => set({ about })}
        fault={faultOf('about')}
      />
      <FindingList findings={editing.findingsAt('unit')} />
    </section>
  );
}

export function EditSuits({ editing }: { readonly editing: Editing }) {
  const { draft, edit, faultOf } = editing;
  const set = (change: Partial<UnitDraft>) => edit((now) => ({ ...now, ...change }));
  return (
    <section className="form-part" aria-label={says.suits}>
      <h2>{says.suits}</h2>
      <StageTicks chosen={draft.stages} onChosen={(stages) => set({ stages })} fault={faultOf('stages')} />
      <AgeFields from={draft.ageFrom} to={draft.ageTo} onAges={set} fault={faultOf('ages')} />
      <fieldset className="field">
        <legend className="field-label">{says.families}</legend>
        <div className="editor-ticks">
          {Object.entries(words.families).map(([family, name]) => (
            <Tick
              key={family}
              ticked={draft.families.includes(family)}
              onTick={(ticked) =>
                set({
                  families: ticked
                    ? [...draft.families, family]
                    : draft.families.filter((one) => one !== family),
                })
              }
            >
              {name}
            </Tick>
          ))}
        </div>
        <p className="field-help">{says.familiesHelp}</p>
      </fieldset>
    </section>
  );
}

export function EditAlsoSkills({ editing }: { readonly editing: Editing }) {
  const { draft, edit, faultOf, skills } = editing;
  const developed = new Set([...draft.activities, ...draft.extensions].flatMap((one) => one.develops));
  return (
    <section className="form-part" aria-label={says.skills}>
      <PickSkills
        label={says.skills}
        help={says.skillsHelp}
        addLabel={says.addSkill}
        fault={faultOf('skills')}
        chosen={draft.alsoSkills.filter((skill) => !developed.has(skill))}
        skills={skills.filter((skill) => !developed.has(skill.id))}
        onChosen={(alsoSkills) => edit((now) => ({ ...now, alsoSkills }))}
        begin={{ area: draft.area, stage: draft.stages[0] ?? 'beginner' }}
      />
      <FindingList findings={editing.findingsAt('skills')} />
    </section>
  );
}
