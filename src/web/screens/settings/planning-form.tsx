// The planning defaults, each with what it does, its unit and its usual value.

import { type FormEvent, useState } from 'react';
import type { StudioView } from '#contract';
import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';
import {
  bounds,
  draftToSettings,
  findSettingFault,
  type PlanningDraft,
  settingNames,
  settingsToDraft,
  usualDraft,
} from './planning-draft.ts';

const says = words.settings.planning;

export function PlanningForm({ studio }: { readonly studio: StudioView }) {
  const send = useCommand();
  /** Only what was typed here, so that a change from elsewhere shows without taking it away. */
  const [typed, setTyped] = useState<Partial<PlanningDraft>>({});
  const kept = settingsToDraft(studio.defaults);
  const draft: PlanningDraft = { ...kept, ...typed };
  const settings = draftToSettings(draft);
  const changed = settingNames.some((name) => draft[name] !== kept[name]);
  const unusual = settingNames.some((name) => draft[name] !== usualDraft[name]);

  async function save(event: FormEvent) {
    event.preventDefault();
    if (!settings || !changed) return;
    if (await send({ type: 'studio.change', seen: studio.revision, defaults: settings })) setTyped({});
  }

  return (
    <form className="settings-form" onSubmit={save} noValidate>
      <ul className="settings-list">
        {settingNames.map((name) => {
          const setting = says.defaults[name];
          const { low, high } = bounds[name];
          const usual = says.usual(`${usualDraft[name]} ${setting.unit}`);
          return (
            <li key={name}>
              <TextField
                label={setting.name}
                type="number"
                min={low}
                max={high}
                unit={setting.unit}
                value={draft[name]}
                onValue={(text) => setTyped({ ...typed, [name]: text })}
                help={draft[name] === usualDraft[name] ? setting.help : `${setting.help} ${usual}`}
                fault={findSettingFault(name, draft[name])}
              />
            </li>
          );
        })}
      </ul>
      <div className="settings-end">
        <Button type="submit" isDisabled={!changed || settings === null}>
          {says.save}
        </Button>
        <Button kind="plain" isDisabled={!unusual} onPress={() => setTyped(usualDraft)}>
          {says.reset}
        </Button>
      </div>
    </form>
  );
}
