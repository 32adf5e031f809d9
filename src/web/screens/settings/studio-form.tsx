// Whose studio it is and how it writes dates, notes and pages.

import { type FormEvent, useState } from 'react';
import type { StudioView } from '#contract';
import { Button } from '../../components/button.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { LocaleField, TimeZoneField } from '../../components/region-fields.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';

const says = words.settings;

const partsOf = ({ name, teacher, locale, timeZone, noteNames, paper }: StudioView) => ({
  name,
  teacher,
  locale,
  timeZone,
  noteNames,
  paper,
});

export function StudioForm({ studio }: { readonly studio: StudioView }) {
  const send = useCommand();
  /** Only what was typed here, so that a change from elsewhere shows without taking it away. */
  const [typed, setTyped] = useState<Partial<ReturnType<typeof partsOf>>>({});
  const draft = { ...partsOf(studio), ...typed };
  const set = (change: typeof typed) => setTyped({ ...typed, ...change });
  const nameFault = draft.name.trim() === '' ? says.studio.nameMissing : null;
  const changed = JSON.stringify(draft) !== JSON.stringify(partsOf(studio));

  async function save(event: FormEvent) {
    event.preventDefault();
    if (nameFault !== null || !changed) return;
    if (await send({ type: 'studio.change', seen: studio.revision, ...typed })) setTyped({});
  }

  return (
    <form className="settings-form" onSubmit={save} noValidate>
      <div className="form-row form-top">
        <TextField
          label={says.studio.name}
          value={draft.name}
          onValue={(name) => set({ name })}
          fault={nameFault}
        />
        <TextField
          label={says.studio.teacher}
          value={draft.teacher}
          onValue={(teacher) => set({ teacher })}
        />
      </div>
      <div className="form-row form-top">
        <LocaleField value={draft.locale} onValue={(locale) => set({ locale })} />
        <TimeZoneField value={draft.timeZone} onValue={(timeZone) => set({ timeZone })} />
      </div>
      <div className="form-row form-top">
        <SelectField
          label={says.region.noteNames}
          value={draft.noteNames}
          onValue={(noteNames) => set({ noteNames })}
          options={(['british', 'american'] as const).map((value) => ({
            value,
            label: says.region.noteNamesOptions[value],
          }))}
        />
        <SelectField
          label={says.region.paper}
          value={draft.paper}
          onValue={(paper) => set({ paper })}
          options={(['A4', 'Letter'] as const).map((value) => ({ value, label: value }))}
        />
      </div>
      <div className="settings-end">
        <Button kind="primary" type="submit" isDisabled={!changed || nameFault !== null}>
          {says.studio.save}
        </Button>
      </div>
    </form>
  );
}
