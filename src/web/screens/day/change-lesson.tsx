// Cancel, missed, move: what can happen to a lesson, each with its reason, each to be undone.

import { useId, useState } from 'react';
import { type Command, type DayLesson, isLessonLength } from '#contract';
import { isDate, isTime, type PlainDate } from '#core';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { TextField } from '../../components/field.tsx';
import { LessonLengthField } from '../../components/lesson-length-field.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { useDay } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { standInTheWay } from './stand-in-the-way.ts';
import './change-lesson.css';

export type LessonChange = 'cancel' | 'miss' | 'move';

export interface ChangeLessonProps {
  readonly lesson: DayLesson;
  readonly date: PlainDate;
  readonly change: LessonChange;
  readonly onClose: () => void;
}

export function ChangeLesson({ change, ...rest }: ChangeLessonProps) {
  return change === 'move' ? <MoveLesson {...rest} /> : <CallOff {...rest} change={change} />;
}

function CallOff({
  lesson,
  change,
  onClose,
}: Omit<ChangeLessonProps, 'change'> & { readonly change: 'cancel' | 'miss' }) {
  const send = useCommand();
  const [busy, setBusy] = useState(false);
  const [reason, setReason] = useState('');
  const { dialog } = words.day;
  const { name } = lesson.learner;
  const title = change === 'cancel' ? dialog.cancelTitle(name) : dialog.missTitle(name);
  const act = async () => {
    if (busy) return;
    setBusy(true);
    const done = await send({ type: `lesson.${change}`, lesson: lesson.id, reason: reason.trim() });
    setBusy(false);
    if (done) onClose();
  };
  return (
    <Dialog title={title} open onClose={onClose}>
      <form
        className="day-form"
        onSubmit={(event) => {
          event.preventDefault();
          void act();
        }}
      >
        <p className="soft">{change === 'cancel' ? dialog.cancelHelp : dialog.missHelp}</p>
        <TextField
          label={dialog.reason}
          help={dialog.reasonHelp}
          value={reason}
          onValue={setReason}
          autoFocus
        />
        <fieldset className="day-form-reasons">
          <legend className="only-heard">{dialog.usualReasons}</legend>
          {(change === 'cancel' ? dialog.reasons : dialog.missReasons).map((usual) => (
            <Button key={usual} large onPress={() => setReason(usual)}>
              {usual}
            </Button>
          ))}
        </fieldset>
        <div className="day-form-actions">
          <Button kind="primary" large type="submit" pending={busy}>
            {change === 'cancel' ? dialog.cancelDo : dialog.missDo}
          </Button>
          <Button large onPress={onClose}>
            {dialog.leave}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}

function MoveLesson({ lesson, date, onClose }: Omit<ChangeLessonProps, 'change'>) {
  const send = useCommand();
  const format = useFormat();
  const [busy, setBusy] = useState(false);
  const [day, setDay] = useState<string>(date);
  const [time, setTime] = useState<string>(lesson.time);
  const [minutes, setMinutes] = useState(String(lesson.minutes));
  const [looked, setLooked] = useState(false);
  const form = useId();
  const { dialog } = words.day;
  const count = Number(minutes);
  const goodMinutes = isLessonLength(count);
  const command: Command | null =
    isDate(day) && isTime(time) && goodMinutes
      ? { type: 'lesson.move', lesson: lesson.id, date: day, time, minutes: count }
      : null;
  const there = useDay(isDate(day) ? day : date).data;
  const told =
    there?.date === day
      ? [
          ...(there.holiday ? [words.day.emptyHoliday(there.holiday)] : []),
          ...(isTime(time) && goodMinutes
            ? standInTheWay(there, lesson.id, { time, minutes: count }).map((other) =>
                words.students.first.clash(other.learner.name, format.time(other.time)),
              )
            : []),
        ]
      : [];
  const act = async () => {
    setLooked(true);
    if (!command || busy) return;
    setBusy(true);
    const done = await send(command);
    setBusy(false);
    if (done) onClose();
  };
  return (
    <Dialog title={dialog.moveTitle(lesson.learner.name)} open onClose={onClose}>
      <form
        id={form}
        className="day-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void act();
        }}
      >
        <p className="soft">{dialog.moveHelp}</p>
        <div className="day-form-fields">
          <TextField
            label={dialog.date}
            type="date"
            value={day}
            onValue={setDay}
            fault={looked && !isDate(day) ? dialog.badDate : null}
            autoFocus
          />
          <TextField
            label={dialog.time}
            type="time"
            value={time}
            onValue={setTime}
            fault={looked && !isTime(time) ? dialog.badTime : null}
          />
          <LessonLengthField
            label={dialog.minutes}
            step={5}
            value={minutes}
            onValue={setMinutes}
            fault={looked && !goodMinutes ? dialog.badMinutes : null}
          />
        </div>
        {/* Told before it is done; it may be meant all the same. */}
        <p className="fault" role="status">
          {told.join(' ')}
        </p>
        <div className="day-form-actions">
          <Button kind="primary" large type="submit" pending={busy}>
            {dialog.moveDo}
          </Button>
          <Button large onPress={onClose}>
            {dialog.leave}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}
