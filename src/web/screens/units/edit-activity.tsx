// One activity opened for writing.

import type { Activity } from '#planning';
import { SelectField, TextField } from '../../components/field.tsx';
import { words } from '../../words/index.ts';
import { EditMaterials } from './edit-materials.tsx';
import { EditVariants } from './edit-variants.tsx';
import type { Editing } from './editing.ts';
import { HowToField } from './how-to-field.tsx';
import { MinutesFields } from './minutes-fields.tsx';
import { PickSkills } from './pick-skills.tsx';
import { type ActivityDraft, type ActivityList, changeRow } from './unit-draft.ts';

const says = words.units.editor;
const characters = ['new', 'hard', 'easy', 'musical'] as const satisfies readonly Activity['character'][];

export interface EditActivityProps {
  readonly editing: Editing;
  readonly list: ActivityList;
  readonly activity: ActivityDraft;
  /** How it is called in the names of its fields. */
  readonly name: string;
}

export function EditActivity({ editing, list, activity, name }: EditActivityProps) {
  const { draft, edit, faultOf } = editing;
  const { handle } = activity;
  const set = (change: Partial<ActivityDraft>) =>
    edit((now) => ({ ...now, [list]: changeRow(now[list], handle, change) }));
  return (
    <div className="editor-row-body">
      <TextField
        label={says.activityTitle}
        value={activity.title}
        onValue={(title) => set({ title })}
        fault={faultOf(`${handle}.title`)}
        required
        autoFocus={activity.key === null && activity.title === ''}
      />
      <HowToField
        label={says.howTo}
        help={says.howToHelp}
        value={activity.howTo}
        onValue={(howTo) => set({ howTo })}
        fault={faultOf(`${handle}.howTo`)}
      />
      <MinutesFields
        minutes={activity.minutes}
        onMinutes={(minutes) => set({ minutes })}
        fault={faultOf(`${handle}.minutes`)}
        help={says.minutesHelp}
      />
      <PickSkills
        label={says.develops}
        help={says.developsHelp}
        addLabel={says.addSkillTo(name)}
        fault={faultOf(`${handle}.develops`)}
        chosen={activity.develops}
        skills={editing.skills}
        onChosen={(develops) => set({ develops })}
        ordered
        begin={{ area: draft.area, stage: draft.stages[0] ?? 'beginner' }}
      />
      <TextField
        label={says.bring}
        help={says.bringHelp}
        rows={2}
        value={activity.bring}
        onValue={(bring) => set({ bring })}
        fault={faultOf(`${handle}.bring`)}
      />
      <SelectField
        label={says.character}
        value={activity.character}
        onValue={(character) => set({ character })}
        options={characters.map((one) => ({ value: one, label: words.units.characters[one] }))}
      />
      <EditMaterials
        editing={editing}
        of={handle}
        label={says.materials}
        materials={activity.materials}
        put={(now, materials) => ({ ...now, [list]: changeRow(now[list], handle, { materials }) })}
      />
      <EditVariants editing={editing} list={list} activity={activity} />
    </div>
  );
}
