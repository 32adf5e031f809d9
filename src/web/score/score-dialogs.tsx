// The small forms that some deeds need. Each sends one command and closes.

import { type FormEvent, type ReactNode, useState } from 'react';
import {
  type Command,
  type CourseView,
  isLessonLength,
  type LessonBarView,
  type SegmentView,
} from '#contract';
import { addDays, isDate, isTime } from '#core';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { SelectField, TextField } from '../components/field.tsx';
import { LessonLengthField } from '../components/lesson-length-field.tsx';
import { words } from '../words/index.ts';
import type { Writing } from './describe.ts';
import { landingBars } from './score-items.ts';

const say = words.score;

interface FormProps {
  readonly title: string;
  readonly verb: string;
  /** What will be sent; null while the fields are not right. */
  readonly command: Command | null;
  readonly onSend: (command: Command) => void;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

function CommandForm({ title, verb, command, onSend, onClose, children }: FormProps) {
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (command) onSend(command);
  };
  return (
    <Dialog title={title} open onClose={onClose}>
      <form className="score-form" onSubmit={submit}>
        {children}
        <p className="score-form-deeds">
          <Button kind="primary" type="submit" isDisabled={command === null}>
            {verb}
          </Button>
          <Button kind="plain" onPress={onClose}>
            {say.dialog.leave}
          </Button>
        </p>
      </form>
    </Dialog>
  );
}

interface Ending {
  readonly onSend: (command: Command) => void;
  readonly onClose: () => void;
}

/** To another lesson: the way without dragging. */
export function MoveSegmentForm({
  course,
  segment,
  bar,
  writing,
  ...ending
}: Ending & {
  readonly course: CourseView;
  readonly segment: SegmentView;
  readonly bar: LessonBarView;
  readonly writing: Writing;
}) {
  const bars = landingBars(course).filter((one) => one.lesson !== bar.lesson);
  const after = bars.find((one) => one.date >= bar.date) ?? bars[0];
  const [chosen, setChosen] = useState<string>(after?.lesson ?? '');
  const target = bars.find((one) => one.lesson === chosen);
  return (
    <CommandForm
      title={say.dialog.moveTitle(segment.title)}
      verb={say.dialog.moveDo}
      command={
        target
          ? {
              type: 'segment.move',
              seen: course.revision,
              segment: segment.id,
              lesson: target.lesson,
              minutes: null,
            }
          : null
      }
      {...ending}
    >
      <SelectField
        label={say.dialog.moveWhere}
        value={chosen}
        onValue={setChosen}
        options={bars.map((one) => ({
          value: one.lesson,
          label: `${writing.day(one.date)} · ${say.lesson(one.number)}`,
        }))}
      />
    </CommandForm>
  );
}

/** Other minutes in the same lesson. */
export function MinutesForm({
  course,
  segment,
  bar,
  ...ending
}: Ending & {
  readonly course: CourseView;
  readonly segment: SegmentView;
  readonly bar: LessonBarView;
}) {
  const [text, setText] = useState(String(segment.minutes));
  const minutes = Number(text);
  const right = Number.isInteger(minutes) && minutes >= 1 && minutes <= Math.min(120, bar.minutes);
  return (
    <CommandForm
      title={say.dialog.minutesTitle(segment.title)}
      verb={say.dialog.minutesDo}
      command={
        right
          ? { type: 'segment.move', seen: course.revision, segment: segment.id, lesson: bar.lesson, minutes }
          : null
      }
      {...ending}
    >
      <TextField
        label={say.dialog.minutesLabel}
        type="number"
        value={text}
        onValue={setText}
        min={1}
        max={bar.minutes}
        autoFocus
        help={say.dialog.minutesHelp}
        fault={right ? null : say.dialog.minutesFault(Math.min(120, bar.minutes))}
      />
    </CommandForm>
  );
}

/** Set aside until a day. */
export function SetAsideForm({
  course,
  segment,
  ...ending
}: Ending & { readonly course: CourseView; readonly segment: SegmentView }) {
  const [day, setDay] = useState<string>(addDays(course.today, 21));
  const { courseUnit, activity } = segment;
  const back = isDate(day) && day > course.today ? day : null;
  return (
    <CommandForm
      title={say.dialog.setAsideTitle(segment.title)}
      verb={say.menu.setAside}
      command={
        courseUnit !== null && activity !== null && back !== null
          ? {
              type: 'activity.setAside',
              seen: course.revision,
              course: course.id,
              courseUnit,
              activity,
              backFrom: back,
            }
          : null
      }
      {...ending}
    >
      <TextField
        label={say.dialog.backFrom}
        type="date"
        value={day}
        onValue={setDay}
        min={addDays(course.today, 1)}
        help={say.dialog.backFromHelp}
        fault={back === null ? say.dialog.backFromFault : null}
      />
    </CommandForm>
  );
}

/** Cancelled or missed, with a reason. */
export function LessonGoneForm({
  bar,
  how,
  writing,
  ...ending
}: Ending & { readonly bar: LessonBarView; readonly how: 'cancel' | 'miss'; readonly writing: Writing }) {
  const [reason, setReason] = useState('');
  const day = writing.day(bar.date);
  return (
    <CommandForm
      title={how === 'cancel' ? say.dialog.cancelTitle(day) : say.dialog.missTitle(day)}
      verb={how === 'cancel' ? say.dialog.cancelDo : say.dialog.missDo}
      command={{
        type: how === 'cancel' ? 'lesson.cancel' : 'lesson.miss',
        lesson: bar.lesson,
        reason: reason.trim(),
      }}
      {...ending}
    >
      <TextField
        label={say.dialog.reason}
        value={reason}
        onValue={setReason}
        autoFocus
        help={say.dialog.reasonHelp}
      />
    </CommandForm>
  );
}

/** To another day, time or length. */
export function LessonTimeForm({
  bar,
  writing,
  ...ending
}: Ending & { readonly bar: LessonBarView; readonly writing: Writing }) {
  const [day, setDay] = useState<string>(bar.date);
  const [time, setTime] = useState<string>(bar.time);
  const [length, setLength] = useState(String(bar.minutes));
  const minutes = Number(length);
  const right = isLessonLength(minutes);
  return (
    <CommandForm
      title={say.dialog.timeTitle(writing.day(bar.date))}
      verb={say.dialog.timeDo}
      command={
        right && isDate(day) && isTime(time)
          ? { type: 'lesson.move', lesson: bar.lesson, date: day, time, minutes }
          : null
      }
      {...ending}
    >
      <div className="score-form-row">
        <TextField
          label={say.dialog.date}
          type="date"
          value={day}
          onValue={setDay}
          autoFocus
          fault={isDate(day) ? null : say.dialog.dateFault}
        />
        <TextField
          label={say.dialog.time}
          type="time"
          value={time}
          onValue={setTime}
          fault={isTime(time) ? null : say.dialog.timeFault}
        />
        <LessonLengthField
          label={say.dialog.length}
          value={length}
          onValue={setLength}
          fault={right ? null : say.dialog.lengthFault}
        />
      </div>
    </CommandForm>
  );
}

/** All the reasons, one a line. */
export function WhyHere({
  title,
  facts,
  reasons,
  onClose,
}: {
  readonly title: string;
  readonly facts: readonly string[];
  readonly reasons: readonly string[];
  readonly onClose: () => void;
}) {
  return (
    <Dialog title={say.dialog.whyTitle(title)} open onClose={onClose}>
      <p className="soft">{facts.join(' · ')}</p>
      <ul className="score-reasons">
        {(reasons.length > 0 ? reasons : [say.dialog.noReasons]).map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </Dialog>
  );
}
