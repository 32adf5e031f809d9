import { type FormEvent, useState } from 'react';
import type { CourseView } from '#contract';
import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';
import { draftToSettings, isSettingRight, settingRanges, settingsToDraft } from './settings-draft.ts';

const say = words.student.plan;

/** How this course is planned: every number with its unit and a sentence. */
export function PlanSettings({ course }: { readonly course: CourseView }) {
  const send = useCommand();
  const [draft, setDraft] = useState(() => settingsToDraft(course.settings));
  const settings = draftToSettings(draft);
  const changed = JSON.stringify(draft) !== JSON.stringify(settingsToDraft(course.settings));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (settings) void send({ type: 'course.change', seen: course.revision, course: course.id, settings });
  };
  return (
    <form className="form-part" onSubmit={submit}>
      <h3>{say.settings}</h3>
      <div className="settings-grid">
        {settingRanges.map((range) => {
          const [label, unit, help] = say.settingsWords[range.key];
          return (
            <TextField
              key={range.key}
              label={label}
              unit={unit}
              help={help}
              type="number"
              min={range.low}
              max={range.high}
              value={draft[range.key]}
              onValue={(value) => setDraft({ ...draft, [range.key]: value })}
              fault={isSettingRight(range, draft[range.key]) ? null : say.wholeFault(range.low, range.high)}
            />
          );
        })}
      </div>
      <p className="form-end">
        <Button type="submit" isDisabled={!changed || settings === null}>
          {say.save}
        </Button>
        <Button
          kind="plain"
          onPress={() => void send({ type: 'course.replan', seen: course.revision, course: course.id })}
        >
          {say.replan}
        </Button>
      </p>
    </form>
  );
}
