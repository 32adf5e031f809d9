// Keeps a spec where a student finds it: on one student's practice sheet alone, or on an activity, of a unit in the library
// for everyone it is given to, or of one student's own copy, where it comes with the practice of every lesson in which the
// activity is worked on.

import { useState } from 'react';
import type { CourseRow } from '#contract';
import type { UnitDocument } from '#planning';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { Tick } from '../../components/tick.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useCourseUnit, useStudents, useUnit } from '../../hooks/use-view.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import { addMaterial } from './add-material.ts';
import { onSheetOf, PlaceField, SheetField } from './keep-place.tsx';

const says = words.materials.keeping;

export interface KeepDialogProps {
  readonly kind: 'sheet' | 'backing';
  readonly open: boolean;
  readonly onClose: () => void;
  readonly title: string;
  readonly spec: Readonly<Record<string, unknown>>;
  readonly seed: number;
  /** The course of the student it was made for, where it was made for one; their practice sheet is proposed. */
  readonly course: CourseRow | null;
}

export function KeepDialog(props: KeepDialogProps) {
  const title = props.kind === 'sheet' ? says.title : says.backingTitle;
  return (
    <Dialog title={title} open={props.open} onClose={props.onClose}>
      {props.open && <KeepForm {...props} />}
    </Dialog>
  );
}

function KeepForm({ kind, onClose, title, spec, seed, course }: KeepDialogProps) {
  const send = useCommand();
  const courses = (useStudents().data?.courses ?? []).filter(({ sheets }) => sheets.length > 0);
  const [name, setName] = useState(title);
  const [place, setPlace] = useState(course === null || course.sheets.length === 0 ? '' : onSheetOf(course));
  const [sheet, setSheet] = useState('');
  const [activity, setActivity] = useState('');
  const [isSame, setIsSame] = useState(false);
  const receiver = courses.find((one) => onSheetOf(one) === place);
  const lesson = receiver?.sheets.find((one) => one.lesson === sheet) ?? receiver?.sheets[0];
  const libraryUnit = useUnit(place.startsWith('unit:') ? place : null).data?.document;
  const copy = useCourseUnit(place.startsWith('course-unit:') ? place : null).data;
  const document: UnitDocument | undefined = libraryUnit ?? copy?.document;
  const activities = document === undefined ? [] : [...document.activities, ...document.extensions];
  const chosen = activities.find((one) => one.key === activity);
  const called = name.trim() || title;

  const keep = () => {
    if (lesson !== undefined)
      return send({
        type: 'material.keep',
        lesson: lesson.lesson,
        material: { id: newId('material'), title: called, spec, seed },
      });
    if (document === undefined || chosen === undefined) return null;
    // A band plays as it was heard and chosen.
    const own = isSame || copy !== undefined || kind === 'backing' ? seed : null;
    const changed = addMaterial(document, chosen.key, { title: called, spec, seed: own });
    return send(
      copy === undefined
        ? { type: 'unit.save', seenVersion: document.version, document: changed }
        : { type: 'courseUnit.change', seen: copy.courseRevision, courseUnit: copy.id, document: changed },
    );
  };
  return (
    <form
      className="form keep-form"
      onSubmit={(event) => {
        event.preventDefault();
        void Promise.resolve(keep()).then((reply) => {
          if (reply !== null) onClose();
        });
      }}
    >
      <TextField label={says.name} value={name} onValue={setName} />
      <PlaceField
        kind={kind}
        courses={courses}
        course={course}
        place={place}
        onPlace={(chosen) => {
          setPlace(chosen);
          setSheet('');
          setActivity('');
        }}
      />
      {receiver !== undefined && (
        <SheetField of={receiver} lesson={lesson?.lesson ?? ''} onLesson={setSheet} />
      )}
      {document !== undefined && (
        <SelectField
          label={says.activity}
          value={activity}
          options={[
            { value: '', label: words.frame.choose },
            ...activities.map((one) => ({ value: one.key, label: one.title })),
          ]}
          onValue={setActivity}
        />
      )}
      {libraryUnit !== undefined && kind === 'sheet' && (
        <Tick ticked={isSame} onTick={setIsSame}>
          {says.same}
        </Tick>
      )}
      <div className="form-end">
        <Button kind="primary" type="submit" isDisabled={lesson === undefined && chosen === undefined}>
          {says.keep}
        </Button>
        <Button kind="plain" onPress={onClose}>
          {words.frame.cancel}
        </Button>
      </div>
    </form>
  );
}
