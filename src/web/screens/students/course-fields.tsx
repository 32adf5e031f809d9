// The part of a form that opens a course: strands, and the time in the week.

import type { ReactNode } from 'react';
import { weekdays } from '#core';
import { Button } from '../../components/button.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { LessonLengthField } from '../../components/lesson-length-field.tsx';
import { Tick } from '../../components/tick.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import type { Beside } from './beside-sibling.ts';
import { BesideSiblings } from './beside-siblings.tsx';
import type { CourseDraft, DraftFaults } from './student-draft.ts';

const form = words.students.form;

export interface CourseFieldsProps {
  readonly course: CourseDraft;
  readonly onCourse: (course: CourseDraft) => void;
  readonly faults: DraftFaults;
  readonly forGroup?: boolean;
  /** Times next to the lessons of siblings. */
  readonly beside?: Beside;
  /** What else the course needs to know, first. */
  readonly children?: ReactNode;
}

export function CourseFields(props: CourseFieldsProps) {
  const { course, onCourse, faults, forGroup = false, beside, children } = props;
  const format = useFormat();
  const set = (change: Partial<CourseDraft>) => onCourse({ ...course, ...change });
  return (
    <section className="form-part">
      <Tick ticked={course.open} onTick={(open) => set({ open })}>
        <strong>{form.course}</strong>
      </Tick>
      <p className="faint">{forGroup ? form.courseGroupHelp : form.courseHelp}</p>
      {course.open && (
        <>
          {children}
          <h3>{form.strands}</h3>
          <p className="faint">{form.strandsHelp}</p>
          <div className="form-row">
            {course.strands.map((name, n) => (
              <TextField
                // The rows have no other identity than their place.
                // biome-ignore lint/suspicious/noArrayIndexKey: strands are told apart by their place alone
                key={n}
                label={form.strandName(n + 1)}
                value={name}
                onValue={(value) => set({ strands: course.strands.with(n, value) })}
              />
            ))}
            {course.strands.length < 8 && (
              <Button kind="plain" onPress={() => set({ strands: [...course.strands, ''] })}>
                {form.addStrand}
              </Button>
            )}
          </div>
          {faults.strands && <p className="fault">{faults.strands}</p>}
          <h3>{form.slot}</h3>
          <div className="form-row form-top">
            <SelectField
              label={form.weekday}
              value={course.weekday}
              onValue={(weekday) => set({ weekday })}
              help={course.weekday === '' ? form.slotHelp : undefined}
              options={[
                { value: '', label: form.noWeekday },
                ...weekdays.map((day) => ({ value: `${day}` as const, label: format.weekday(day) })),
              ]}
            />
            {course.weekday !== '' && (
              <>
                <TextField
                  label={form.time}
                  type="time"
                  value={course.time}
                  onValue={(time) => set({ time })}
                  fault={faults.time ?? null}
                />
                <LessonLengthField
                  label={form.minutes}
                  step={5}
                  unit={form.minutesUnit}
                  value={course.minutes}
                  onValue={(minutes) => set({ minutes })}
                  fault={faults.minutes ?? null}
                />
                <TextField
                  label={form.starts}
                  type="date"
                  value={course.starts}
                  onValue={(starts) => set({ starts })}
                />
              </>
            )}
          </div>
          {beside && (
            <BesideSiblings
              beside={beside}
              chosen={course}
              onPlace={({ weekday, time }) => {
                const day = weekdays.find((one) => String(one) === weekday);
                if (day) set({ weekday: `${day}`, time });
              }}
            />
          )}
        </>
      )}
    </section>
  );
}
