// The student's own copy of a unit: how it differs from the library, adapting it, and taking it one way or the other.

import { type FormEvent, useState } from 'react';
import type { Command, CourseUnitCompareView, CourseUnitView } from '#contract';
import type { UnitDocument } from '#planning';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { TextField } from '../../components/field.tsx';
import { Loaded } from '../../components/loading.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useCourseUnit } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { type CopyDraft, documentToDraft, draftToDocument } from './copy-draft.ts';

const say = words.student.copy;

interface Props {
  readonly unit: CourseUnitView;
  readonly seen: number;
  readonly onClose: () => void;
}

export function UnitCopy({ unit, seen, onClose }: Props) {
  const compare = useCourseUnit(unit.id);
  return (
    <Dialog title={say.title(unit.title)} open onClose={onClose} width="wide">
      <Loaded view={compare}>
        {(view) => <Copy key={view.courseRevision} view={view} seen={seen} onClose={onClose} />}
      </Loaded>
    </Dialog>
  );
}

function Copy({
  view,
  seen,
  onClose,
}: {
  readonly view: CourseUnitCompareView;
  readonly seen: number;
  readonly onClose: () => void;
}) {
  const send = useCommand();
  const sendAndClose = async (command: Command) => {
    if (await send(command)) onClose();
  };
  const differs = view.differences.length > 0;
  return (
    <div className="form">
      <section className="form-part">
        <h3>{say.differences}</h3>
        {view.library === null ? (
          <p className="soft">{say.noLibrary}</p>
        ) : differs ? (
          <ul className="plain-list">
            {view.differences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        ) : (
          <p className="soft">{say.same}</p>
        )}
        {(differs || view.library === null) && (
          <ul className="copy-ways">
            <li>
              <Button
                onPress={() =>
                  void sendAndClose({ type: 'courseUnit.takeIntoLibrary', seen, courseUnit: view.id })
                }
              >
                {say.takeInto}
              </Button>
              <span className="faint">{say.takeIntoHelp}</span>
            </li>
            {view.library !== null && (
              <li>
                <Button
                  onPress={() =>
                    void sendAndClose({ type: 'courseUnit.takeFromLibrary', seen, courseUnit: view.id })
                  }
                >
                  {say.takeFrom}
                </Button>
                <span className="faint">{say.takeFromHelp}</span>
              </li>
            )}
          </ul>
        )}
      </section>
      <Adapt
        document={view.document}
        onSave={(document) =>
          void sendAndClose({ type: 'courseUnit.change', seen, courseUnit: view.id, document })
        }
      />
    </div>
  );
}

function Adapt({
  document,
  onSave,
}: {
  readonly document: UnitDocument;
  readonly onSave: (document: UnitDocument) => void;
}) {
  const [draft, setDraft] = useState<CopyDraft>(() => documentToDraft(document));
  const made = draftToDocument(document, draft);
  const changeActivity = (key: string, change: Partial<CopyDraft['activities'][number]>) =>
    setDraft({
      ...draft,
      activities: draft.activities.map((one) => (one.key === key ? { ...one, ...change } : one)),
    });
  const faultOf = (key: string, field: 'title' | 'minutes') =>
    made.ok ? null : made.error.some((f) => f.activity === key && f.field === field) ? faults[field] : null;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (made.ok) onSave(made.value);
  };
  return (
    <form className="form-part" onSubmit={submit}>
      <h3>{say.adapt}</h3>
      <TextField label={say.goal} value={draft.goal} onValue={(goal) => setDraft({ ...draft, goal })} />
      <ol className="copy-activities">
        {draft.activities.map((one) => (
          <li key={one.key} className={one.leftOut ? 'copy-left-out' : ''}>
            <div className="form-row">
              <div className="field-broad field">
                <TextField
                  label={say.activity}
                  value={one.title}
                  onValue={(title) => changeActivity(one.key, { title })}
                  fault={faultOf(one.key, 'title')}
                />
              </div>
              {(['shortest', 'usual', 'longest'] as const).map((which) => (
                <div key={which} className="field field-slim">
                  <TextField
                    label={say[which]}
                    type="number"
                    min={1}
                    value={one[which]}
                    onValue={(value) => changeActivity(one.key, { [which]: value })}
                  />
                </div>
              ))}
              <Button kind="plain" onPress={() => changeActivity(one.key, { leftOut: !one.leftOut })}>
                {one.leftOut ? say.putBack : say.leaveOut}
              </Button>
            </div>
            {faultOf(one.key, 'minutes') && <p className="fault">{faultOf(one.key, 'minutes')}</p>}
            {one.leftOut ? (
              <p className="faint">{say.leftOut}</p>
            ) : (
              <TextField
                label={say.howTo}
                rows={3}
                value={one.howTo}
                onValue={(howTo) => changeActivity(one.key, { howTo })}
              />
            )}
          </li>
        ))}
      </ol>
      {!made.ok && made.error.some((f) => f.field === 'all') && <p className="fault">{say.needsOne}</p>}
      <p className="form-end">
        <Button kind="primary" type="submit" isDisabled={!made.ok}>
          {say.save}
        </Button>
      </p>
    </form>
  );
}

const faults = { title: say.titleFault, minutes: say.minutesFault } as const;
