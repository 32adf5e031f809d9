// A student leaves on a day, comes back, or, never having been taught, is taken out again; and the way to erasing one for good.

import { useState } from 'react';
import type { Command, StudentView } from '#contract';
import { isDate, type PlainDate } from '#core';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { TextField } from '../../components/field.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';

const form = words.students.form;

export interface LeavingFieldsProps {
  readonly student: StudentView;
  readonly today: PlainDate;
  readonly onDone: () => void;
}

export function LeavingFields({ student, today, onDone }: LeavingFieldsProps) {
  const send = useCommand();
  const format = useFormat();
  const [on, setOn] = useState<string>(today);
  const act = async (command: Command) => {
    if (await send(command)) onDone();
  };
  const { id, revision: seen } = student;
  const says = student.left !== null && student.left >= today ? words.students.leaves : words.students.left;
  return (
    <section className="form-part">
      <h3>{form.leaving}</h3>
      {student.left === null ? (
        <div className="form-row">
          <div className="field field-slim">
            <TextField label={form.leavesOn} type="date" value={on} onValue={setOn} />
          </div>
          <Button
            isDisabled={!isDate(on)}
            onPress={() => isDate(on) && void act({ type: 'student.leave', seen, student: id, on })}
          >
            {form.leave}
          </Button>
        </div>
      ) : (
        <div className="form-row">
          <p>{says(format.day(student.left, 'long'))}</p>
          <Button onPress={() => void act({ type: 'student.return', seen, student: id })}>
            {form.return}
          </Button>
        </div>
      )}
      <p className="faint">
        {form.removeHelp}{' '}
        <Button kind="plain" onPress={() => void act({ type: 'student.remove', seen, student: id })}>
          {form.remove}
        </Button>
      </p>
      <p className="faint">
        {form.eraseHelp}{' '}
        <ButtonLink kind="plain" to={`/student/${id}/erase`}>
          {form.erase}
        </ButtonLink>
      </p>
    </section>
  );
}
