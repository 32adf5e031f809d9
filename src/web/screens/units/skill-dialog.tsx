// Adds a skill to the map, or changes one. Used over the map and over the unit editor.

import { type FormEvent, useState } from 'react';
import { type Area, areas, type Skill, type SkillId, type Stage } from '#planning';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { StageSelect } from '../../components/stage-select.tsx';
import { Tick } from '../../components/tick.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useSkills } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import { draftToSkill, findSkillFaults, type SkillDraft } from './skill-draft.ts';
import { SkillPicker } from './skill-picker.tsx';
import '../../components/form.css';

const says = words.units.skills;

export interface SkillDialogProps {
  readonly known: Skill | null;
  /** What a new one begins with. */
  readonly begin: { readonly title: string; readonly area: Area; readonly stage: Stage };
  /** Told the skill that was saved, or null when none was. */
  readonly onClose: (skill: SkillId | null) => void;
}

export function SkillDialog({ known, begin, onClose }: SkillDialogProps) {
  const send = useCommand();
  const skills = useSkills().data?.skills ?? [];
  const [draft, setDraft] = useState<SkillDraft>(
    () => known ?? { ...begin, description: '', restsOn: [], ongoing: false },
  );
  const [tried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);
  const faults = findSkillFaults(draft, known, skills);
  const set = (change: Partial<SkillDraft>) => setDraft({ ...draft, ...change });

  async function save(event: FormEvent) {
    event.preventDefault();
    // The dialog stands over the unit's own form, which React would submit as well.
    event.stopPropagation();
    setTried(true);
    if (Object.keys(faults).length > 0 || busy) return;
    setBusy(true);
    const { id, title, area, stage, description, restsOn, ongoing } = draftToSkill(draft, known, skills);
    const sent = await send({
      type: 'skill.put',
      skill: { id, title, area, stage, description, restsOn: [...restsOn], ongoing },
    });
    setBusy(false);
    if (sent) onClose(id);
  }

  return (
    <Dialog title={known ? says.changeTitle : says.addTitle} open onClose={() => onClose(null)} width="wide">
      <form className="form" onSubmit={save} noValidate>
        <TextField
          label={says.form.title}
          placeholder={says.form.titlePlaceholder}
          value={draft.title}
          onValue={(title) => set({ title })}
          fault={tried || draft.title !== begin.title ? (faults.title ?? null) : null}
          required
          autoFocus
        />
        <div className="form-row">
          <SelectField
            label={says.form.area}
            value={draft.area}
            onValue={(area) => set({ area })}
            options={areas.map((area) => ({ value: area, label: areaNames[area] }))}
          />
          <StageSelect label={says.form.stage} value={draft.stage} onValue={(stage) => set({ stage })} />
        </div>
        <TextField
          label={says.form.description}
          help={says.form.descriptionHelp}
          rows={3}
          value={draft.description}
          onValue={(description) => set({ description })}
          fault={faults.description ?? null}
        />
        <SkillPicker
          label={says.form.restsOn}
          addLabel={says.form.restsOnHelp}
          help={says.form.restsOnHelp}
          fault={faults.restsOn ?? null}
          chosen={draft.restsOn}
          skills={skills.filter((skill) => skill.id !== known?.id)}
          onChosen={(restsOn) => set({ restsOn })}
        />
        <Tick ticked={draft.ongoing} onTick={(ongoing) => set({ ongoing })}>
          {says.form.ongoing}
        </Tick>
        <div className="form-end">
          <Button kind="primary" type="submit" pending={busy}>
            {known ? says.form.save : says.form.addAction}
          </Button>
          <Button kind="plain" onPress={() => onClose(null)}>
            {words.frame.cancel}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}
