// A unit file taken in: chosen or pasted, looked at, and only then saved.

import { useState } from 'react';
import type { PreviewUnits, UnitImportPreview } from '#contract';
import type { UnitId } from '#planning';
import { postJson } from '../../app/api.ts';
import { showFault } from '../../app/send.ts';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { ChooseFile } from '../../components/choose-file.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { TextField } from '../../components/field.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import { stageSpan } from './stage-span.ts';

const says = words.units.file;

/** JSON begins with a brace; all else is read as YAML. */
const formOf = (text: string): PreviewUnits['form'] => (/^\s*\{/.test(text) ? 'json' : 'yaml');

export interface TakeInProps {
  readonly open: boolean;
  /** Told the unit that was taken in, or null when none was. */
  readonly onClose: (unit: UnitId | null) => void;
}

export function TakeIn({ open, onClose }: TakeInProps) {
  return (
    <Dialog title={says.title} open={open} onClose={() => onClose(null)} width="wide">
      <TakeInForm onDone={onClose} />
    </Dialog>
  );
}

function TakeInForm({ onDone }: { readonly onDone: (unit: UnitId | null) => void }) {
  const send = useCommand();
  const [pasted, setPasted] = useState('');
  const [preview, setPreview] = useState<UnitImportPreview | null>(null);
  const [busy, setBusy] = useState(false);

  async function look(text: string) {
    setBusy(true);
    const asked: PreviewUnits = { text, form: formOf(text) };
    const reply = await postJson<UnitImportPreview>('/api/preview/units', asked);
    setBusy(false);
    if (reply.ok) setPreview(reply.value);
    else showFault(reply.error);
  }
  async function takeIn({ units, skills }: UnitImportPreview) {
    setBusy(true);
    const sent = await send({
      type: 'unit.import',
      units: units.map((unit) => unit.document),
      skills: skills.map((skill) => ({ ...skill, restsOn: [...skill.restsOn] })),
    });
    setBusy(false);
    if (sent) onDone(units[0]?.document.id ?? null);
  }

  const first = preview?.units[0];
  return (
    <div className="take-in">
      <p className="soft">{says.lead}</p>
      <ChooseFile
        label={preview ? says.another : says.choose}
        kind={first ? 'quiet' : 'primary'}
        accept={['.yaml', '.yml', '.json', 'application/json', 'application/yaml', 'text/plain']}
        pending={busy}
        onText={(text) => void look(text)}
      />
      {(!preview || preview.faults.length > 0) && (
        <>
          <TextField label={says.paste} rows={6} value={pasted} onValue={setPasted} />
          <Button isDisabled={pasted.trim() === ''} pending={busy} onPress={() => void look(pasted)}>
            {says.look}
          </Button>
        </>
      )}
      {preview && preview.faults.length > 0 && (
        <section role="alert">
          <h3>{says.faults(preview.faults.length)}</h3>
          <ul className="take-in-list fault">
            {preview.faults.map((fault) => (
              <li key={fault}>{fault}</li>
            ))}
          </ul>
        </section>
      )}
      {preview?.units.map((unit) => (
        <Held key={unit.document.id} unit={unit} />
      ))}
      {preview && preview.faults.length === 0 && (
        <section>
          {preview.skills.length === 0 ? (
            <p className="soft">{says.noSkills}</p>
          ) : (
            <>
              <h3>{says.skills(preview.skills.length)}</h3>
              <ul className="take-in-list">
                {preview.skills.map((skill) => (
                  <li key={skill.id}>
                    {sentenceCase(skill.title)} <span className="faint">{areaNames[skill.area]}</span>
                  </li>
                ))}
              </ul>
            </>
          )}
        </section>
      )}
      {preview && first && (
        <Button kind="primary" pending={busy} onPress={() => void takeIn(preview)}>
          {says.act(first.document.title)}
        </Button>
      )}
    </div>
  );
}

function Held({ unit }: { readonly unit: UnitImportPreview['units'][number] }) {
  const format = useFormat();
  const { document, known, findings } = unit;
  const minutes = document.activities.reduce((sum, one) => sum + one.minutes.usual, 0);
  return (
    <section className="take-in-list">
      <h3>{document.title}</h3>
      <p>{known === null ? says.isNew : says.becomes(known)}</p>
      <p>… {words.units.goal(document.goal)}</p>
      <p className="soft">
        {[
          areaNames[document.area],
          stageSpan(document.stages),
          words.units.agesSuit(document.ages),
          words.units.work(format.minutes(minutes), document.activities.length),
        ].join(' · ')}
      </p>
      <ol className="take-in-list">
        {document.activities.map((activity, at) => (
          <li key={activity.key}>
            {at + 1}. {activity.title} <span className="faint">{format.minutes(activity.minutes.usual)}</span>
          </li>
        ))}
      </ol>
      {findings.length > 0 && (
        <>
          <h4>{says.findings}</h4>
          <ul className="take-in-list soft">
            {findings.map((finding) => (
              <li key={finding}>{finding}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
