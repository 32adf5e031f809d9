// Adds a student, or changes one, in one step with their course and weekly lesson.

import { type FormEvent, useState } from 'react';
import type { StudentView } from '#contract';
import { type Id, type PlainDate, present } from '#core';
import { sendTogether } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { SelectField } from '../../components/field.tsx';
import { Loaded } from '../../components/loading.tsx';
import { useStudent, useStudio, useTerm } from '../../hooks/use-view.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import { findBeside } from './beside-sibling.ts';
import { CourseFields } from './course-fields.tsx';
import { weekToStands } from './first-lessons-draft.ts';
import { LeavingFields } from './leaving-fields.tsx';
import {
  draftOfStudent,
  draftToCommands,
  findDraftFaults,
  newStudentDraft,
  shortInstrument,
} from './student-draft.ts';
import { StudentFields } from './student-fields.tsx';
import '../../components/form.css';

const form = words.students.form;

interface StudentFormProps {
  readonly known: StudentView | null;
  readonly today: PlainDate;
  readonly onDone: (student: Id<'student'> | null) => void;
}

function StudentForm({ known, today, onDone }: StudentFormProps) {
  // What is written over is what was there when the form opened, not what another window made of it since.
  const [opened] = useState(known);
  const [draft, setDraft] = useState(() => (known ? draftOfStudent(known, today) : newStudentDraft(today)));
  const [tried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);
  const week = useTerm().data?.week ?? [];
  const faults = findDraftFaults(draft, today);
  const shown = tried ? faults : {};
  const played = draft.instruments.map((row) => row.instrument).filter((id) => id !== '');

  async function save(event: FormEvent) {
    event.preventDefault();
    setTried(true);
    if (Object.keys(faults).length > 0 || busy) return;
    setBusy(true);
    const commands = draftToCommands(draft, opened, today, newId);
    const opens = commands.some(({ type }) => type === 'course.open');
    const says = known
      ? opens
        ? form.changedWithCourse
        : form.changed
      : opens
        ? form.addedWithCourse
        : form.added;
    const sent = await sendTogether(commands, says(draft.name.trim()));
    setBusy(false);
    const [first] = commands;
    if (sent && (first?.type === 'student.add' || first?.type === 'student.change')) onDone(first.student.id);
  }

  return (
    <form className="form" onSubmit={save} noValidate>
      <StudentFields draft={draft} own={known?.id ?? null} onDraft={setDraft} faults={shown} today={today} />
      <CourseFields
        course={draft.course}
        onCourse={(course) => setDraft({ ...draft, course })}
        faults={shown}
        beside={findBeside(
          draft.siblings.map(({ id }) => id),
          Number(draft.course.minutes),
          weekToStands(week),
        )}
      >
        {played.length > 1 && (
          <div className="form-row">
            <div className="field field-broad">
              <SelectField
                label={form.courseInstrument}
                value={
                  played.find((id) => id === draft.course.instrument) ?? present(played[0], 'one of several')
                }
                onValue={(instrument) => setDraft({ ...draft, course: { ...draft.course, instrument } })}
                options={played.map((id) => ({ value: id, label: shortInstrument(id) }))}
              />
            </div>
          </div>
        )}
      </CourseFields>
      <div className="form-end">
        <Button kind="primary" type="submit" pending={busy}>
          {known ? form.save : form.addAction}
        </Button>
        <Button kind="plain" onPress={() => onDone(null)}>
          {words.frame.cancel}
        </Button>
        {tried && Object.keys(faults).length > 0 && (
          <p className="fault" role="alert">
            {words.frame.mendFirst(Object.keys(faults).length)}
          </p>
        )}
      </div>
      {known && <LeavingFields student={known} today={today} onDone={() => onDone(null)} />}
    </form>
  );
}

export interface StudentDialogProps {
  /** Null to add a student. */
  readonly student: Id<'student'> | null;
  readonly open: boolean;
  /** Told the student that was added or changed, or null when nothing was. */
  readonly onClose: (student: Id<'student'> | null) => void;
}

export function StudentDialog({ student, open, onClose }: StudentDialogProps) {
  const studio = useStudio();
  const view = useStudent(open ? student : null);
  return (
    <Dialog
      title={student === null ? form.addTitle : (view.data?.name ?? form.changeTitle)}
      open={open}
      onClose={() => onClose(null)}
      width="wide"
    >
      <Loaded view={studio}>
        {({ today }) =>
          student === null ? (
            <StudentForm known={null} today={today} onDone={onClose} />
          ) : (
            <Loaded view={view}>
              {(known) => <StudentForm key={known.id} known={known} today={today} onDone={onClose} />}
            </Loaded>
          )
        }
      </Loaded>
    </Dialog>
  );
}
