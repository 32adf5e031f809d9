// A group: its name, its members, and a course for it where wanted.

import { type FormEvent, useState } from 'react';
import type { Command, GroupView, StudentRow } from '#contract';
import type { Id, PlainDate } from '#core';
import type { InstrumentId } from '#music';
import type { Stage } from '#planning';
import { sendTogether } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { TextField } from '../../components/field.tsx';
import { InstrumentSelect } from '../../components/instrument-select.tsx';
import { StageSelect } from '../../components/stage-select.tsx';
import { Tick } from '../../components/tick.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import { CourseFields } from './course-fields.tsx';
import { courseToOpen, findCourseFaults, newCourseDraft } from './student-draft.ts';
import '../../components/form.css';

const groups = words.students.groups;
const form = words.students.form;

export interface GroupDialogProps {
  /** Null to add one. */
  readonly group: GroupView | null;
  readonly students: readonly StudentRow[];
  readonly today: PlainDate;
  readonly onClose: () => void;
}

export function GroupDialog({ group, students, today, onClose }: GroupDialogProps) {
  const send = useCommand();
  const [name, setName] = useState(group?.name ?? '');
  const [members, setMembers] = useState<ReadonlySet<Id<'student'>>>(new Set(group?.members));
  const [instrument, setInstrument] = useState<InstrumentId | ''>('');
  const [stage, setStage] = useState<Stage>('beginner');
  const [course, setCourse] = useState(() => newCourseDraft(group === null, today));
  const [tried, setTried] = useState(false);
  const faults = {
    ...findCourseFaults(course),
    ...(course.open && instrument === '' ? { course: form.instrumentMissing } : {}),
  };
  const nameFault = name.trim() === '' ? groups.needsName : null;
  const faulty = nameFault !== null || members.size === 0 || Object.keys(faults).length > 0;

  async function save(event: FormEvent) {
    event.preventDefault();
    setTried(true);
    if (faulty) return;
    const id = group?.id ?? newId('group');
    const put: Command = {
      type: 'group.put',
      seen: group?.revision ?? 0,
      group: { id, name: name.trim(), members: [...members] },
    };
    const who = { student: null, group: id };
    const sent =
      course.open && instrument !== ''
        ? await sendTogether(
            [put, courseToOpen(course, who, { instrument, stage }, today, newId)],
            groups.added(name.trim()),
          )
        : await send(put);
    if (sent) onClose();
  }

  const here = students.filter((s) => s.left === null || members.has(s.id));
  return (
    <Dialog title={group === null ? groups.add : group.name} open onClose={onClose} width="wide">
      <form className="form" onSubmit={save} noValidate>
        <section className="form-part">
          <TextField
            label={groups.name}
            value={name}
            onValue={setName}
            fault={tried ? nameFault : null}
            autoFocus
          />
        </section>
        <fieldset className="form-part">
          <legend>{groups.members}</legend>
          <div className="form-row">
            {here.map((student) => (
              <Tick
                key={student.id}
                ticked={members.has(student.id)}
                onTick={(ticked) => {
                  const next = new Set(members);
                  if (ticked) next.add(student.id);
                  else next.delete(student.id);
                  setMembers(next);
                }}
              >
                {student.name}
              </Tick>
            ))}
          </div>
          {tried && members.size === 0 && <p className="fault">{groups.needsMember}</p>}
        </fieldset>
        <CourseFields course={course} onCourse={setCourse} faults={tried ? faults : {}} forGroup>
          <div className="form-row">
            <div className="field field-broad">
              <InstrumentSelect
                label={form.instrument}
                value={instrument}
                onValue={setInstrument}
                fault={tried ? (faults.course ?? null) : null}
              />
            </div>
            <StageSelect label={form.stage} value={stage} onValue={setStage} />
          </div>
        </CourseFields>
        <div className="form-end">
          <Button kind="primary" type="submit">
            {group === null ? groups.add : form.save}
          </Button>
          <Button kind="plain" onPress={onClose}>
            {words.frame.cancel}
          </Button>
          {group && (
            <Button
              kind="plain"
              onPress={async () => {
                if (await send({ type: 'group.remove', seen: group.revision, group: group.id })) onClose();
              }}
            >
              {groups.remove}
            </Button>
          )}
        </div>
      </form>
    </Dialog>
  );
}
