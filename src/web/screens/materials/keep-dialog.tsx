// Keeps a sheet's spec on an activity: of a unit in the library, for everyone it is given to, or of one student's own copy,
// where it comes onto their practice sheet whenever that activity was worked on.

import { useState } from 'react';
import type { Id } from '#core';
import type { UnitDocument } from '#planning';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { Tick } from '../../components/tick.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useCourse, useCourseUnit, useUnit, useUnits } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { addMaterial } from './add-material.ts';

const says = words.materials.keeping;

export interface KeepDialogProps {
  readonly open: boolean;
  readonly onClose: () => void;
  readonly title: string;
  readonly spec: unknown;
  readonly seed: number;
  /** The player's name and course, where the sheet was made for a student who has one. */
  readonly student: { readonly name: string; readonly course: Id<'course'> } | null;
}

export function KeepDialog(props: KeepDialogProps) {
  return (
    <Dialog title={says.title} open={props.open} onClose={props.onClose}>
      {props.open && <KeepForm {...props} />}
    </Dialog>
  );
}

function KeepForm({ onClose, title, spec, seed, student }: KeepDialogProps) {
  const send = useCommand();
  const units = useUnits().data?.units ?? [];
  const course = useCourse(student?.course ?? null).data;
  const [name, setName] = useState(title);
  const [place, setPlace] = useState('');
  const [activity, setActivity] = useState('');
  const [isSame, setIsSame] = useState(false);
  const libraryUnit = useUnit(place.startsWith('unit:') ? place : null).data?.document;
  const copy = useCourseUnit(place.startsWith('course-unit:') ? place : null).data;
  const document: UnitDocument | undefined = libraryUnit ?? copy?.document;
  const activities = document === undefined ? [] : [...document.activities, ...document.extensions];
  const chosen = activities.find((one) => one.key === activity);
  const keep = async () => {
    if (document === undefined || chosen === undefined) return;
    const kept = addMaterial(document, chosen.key, {
      title: name.trim() || title,
      spec,
      seed: isSame || copy !== undefined ? seed : null,
    });
    const reply = await send(
      copy === undefined
        ? { type: 'unit.save', seenVersion: document.version, document: kept }
        : { type: 'courseUnit.change', seen: copy.courseRevision, courseUnit: copy.id, document: kept },
    );
    if (reply !== null) onClose();
  };
  return (
    <form
      className="form keep-form"
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <TextField label={says.name} value={name} onValue={setName} />
      <SelectField
        label={says.unit}
        value={place}
        options={[
          { value: '', label: words.frame.choose },
          ...(course?.units ?? []).map((unit) => ({
            value: String(unit.id),
            label: unit.title,
            group: says.copiesOf(student?.name ?? ''),
          })),
          ...units
            .filter((unit) => !unit.retired)
            .map((unit) => ({ value: String(unit.id), label: unit.title, group: says.library })),
        ]}
        onValue={(value) => {
          setPlace(value);
          setActivity('');
        }}
        help={place.startsWith('course-unit:') ? says.copyHelp : says.libraryHelp}
      />
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
      {libraryUnit !== undefined && (
        <Tick ticked={isSame} onTick={setIsSame}>
          {says.same}
        </Tick>
      )}
      <div className="form-end">
        <Button kind="primary" type="submit" isDisabled={chosen === undefined}>
          {says.keep}
        </Button>
        <Button kind="plain" onPress={onClose}>
          {words.frame.cancel}
        </Button>
      </div>
    </form>
  );
}
