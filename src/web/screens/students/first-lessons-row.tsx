// One learner's first lesson: the day, the time, the length and a first unit, on one line.

import { useId } from 'react';
import type { UnitRow } from '#contract';
import { weekdays } from '#core';
import type { Stage } from '#planning';
import { SelectField, TextField } from '../../components/field.tsx';
import type { Waiting } from '../../components/find-waiting.ts';
import { InstrumentSelect } from '../../components/instrument-select.tsx';
import { LessonLengthField } from '../../components/lesson-length-field.tsx';
import { StageSelect } from '../../components/stage-select.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { areaNames } from '../../words/student.ts';
import type { Beside } from './beside-sibling.ts';
import { BesideSiblings } from './beside-siblings.tsx';
import { type FirstLesson, type FirstLessonFaults, isFitting } from './first-lessons-draft.ts';
import { shortInstrument } from './student-draft.ts';

const says = words.students.first;

export interface FirstLessonsRowProps {
  readonly waiting: Waiting;
  readonly lesson: FirstLesson;
  readonly units: readonly UnitRow[];
  readonly faults: FirstLessonFaults;
  /** What else stands at this time; null where nothing does. */
  readonly clash: string | null;
  /** Times next to a sibling's lesson. */
  readonly beside: Beside;
  readonly onLesson: (lesson: FirstLesson) => void;
}

export function FirstLessonsRow(props: FirstLessonsRowProps) {
  const { waiting, lesson, units, faults, clash, beside, onLesson } = props;
  const format = useFormat();
  const id = useId();
  const { name, age, student, course, wantsTime, wantsUnit } = waiting;
  const set = (change: Partial<FirstLesson>) => onLesson({ ...lesson, ...change });
  const played = student?.instruments ?? [];
  const onDay = lesson.weekday !== '' && lesson.weekday !== 'open';
  const facts = [
    age === null ? null : words.day.age(age),
    course || played.length === 1
      ? `${shortInstrument(lesson.instrument || 'piano')}, ${words.stageNames[lesson.stage].toLowerCase()}`
      : null,
  ].filter((fact) => fact !== null);
  return (
    <li className="first-row">
      <fieldset aria-labelledby={id}>
        <p className="first-who">
          <span className="students-name" id={id}>
            {name}
          </span>{' '}
          <span className="soft">{facts.join(' · ')}</span>
        </p>
        <div className="first-fields">
          {course === null && played.length !== 1 && (
            <div className="first-plays">
              <div className="first-instrument">
                {played.length === 0 ? (
                  <InstrumentSelect
                    label={says.instrument}
                    value={lesson.instrument}
                    fault={faults.instrument ?? null}
                    onValue={(instrument) => set({ instrument })}
                  />
                ) : (
                  <SelectField
                    label={says.instrument}
                    value={lesson.instrument}
                    options={played.map((one) => ({
                      value: one.instrument,
                      label: `${shortInstrument(one.instrument)}, ${words.stageNames[one.stage].toLowerCase()}`,
                    }))}
                    onValue={(instrument) =>
                      set({
                        instrument,
                        stage: played.find((one) => one.instrument === instrument)?.stage ?? lesson.stage,
                      })
                    }
                  />
                )}
              </div>
              {played.length === 0 && (
                <div className="first-stage">
                  <StageSelect label={says.stage} value={lesson.stage} onValue={(stage) => set({ stage })} />
                </div>
              )}
            </div>
          )}
          {wantsTime && (
            <div className="first-when">
              <div className="first-day">
                <SelectField
                  label={says.day}
                  value={lesson.weekday}
                  onValue={(weekday) => set({ weekday })}
                  options={[
                    { value: '', label: says.noDay },
                    ...weekdays.map((day) => ({ value: `${day}` as const, label: format.weekday(day) })),
                    ...(course === null ? [{ value: 'open' as const, label: says.byArrangement }] : []),
                  ]}
                />
              </div>
              {onDay && (
                <>
                  <div className="first-time">
                    <TextField
                      label={says.time}
                      type="time"
                      value={lesson.time}
                      onValue={(time) => set({ time })}
                      fault={faults.time ?? null}
                    />
                  </div>
                  <div className="first-length">
                    <LessonLengthField
                      label={says.minutes}
                      step={5}
                      unit={says.minutesUnit}
                      value={lesson.minutes}
                      onValue={(minutes) => set({ minutes })}
                      fault={faults.minutes ?? null}
                    />
                  </div>
                </>
              )}
            </div>
          )}
          {wantsUnit && (
            <div className="first-unit">
              <SelectField
                label={says.unit}
                value={lesson.unit}
                onValue={(unit) => set({ unit })}
                options={[{ value: '', label: says.noUnit }, ...unitOptions(units, lesson.stage, age)]}
              />
            </div>
          )}
        </div>
        {wantsTime && (
          <BesideSiblings
            beside={beside}
            chosen={lesson}
            onPlace={({ weekday, time }) => {
              const day = weekdays.find((one) => String(one) === weekday);
              if (day) set({ weekday: `${day}`, time });
            }}
          />
        )}
        {clash !== null && <p className="fault first-clash">{clash}</p>}
      </fieldset>
    </li>
  );
}

/** The library's units, those that suit this learner first. */
function unitOptions(units: readonly UnitRow[], stage: Stage, age: number | null) {
  const kept = units.filter((unit) => !unit.retired);
  const fits = kept.filter((unit) => isFitting(unit, stage, age));
  const others = kept.filter((unit) => !fits.includes(unit));
  const option = (group: string) => (unit: UnitRow) => ({
    value: unit.id as string,
    label: `${unit.title} (${areaNames[unit.area].toLowerCase()})`,
    group,
  });
  return [...fits.map(option(says.fits)), ...others.map(option(says.others))];
}
