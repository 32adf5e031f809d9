import { type FormEvent, useState } from 'react';
import { type Command, type CourseView, isLessonLength, type SlotView } from '#contract';
import { isTime, type PlainTime, type Weekday, weekdays } from '#core';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { LessonLengthField } from '../../components/lesson-length-field.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { newId } from '../../new-id.ts';
import { isOver } from '../../score/is-over.ts';
import { words } from '../../words/index.ts';
import { BesideSiblings } from '../students/beside-siblings.tsx';
import { useBeside } from '../students/use-beside.ts';
import { dayOrNull } from './what-if-commands.ts';

const say = words.student.plan;

/** Weekly lessons, single lessons and events of a course. */
export function PlanDays({ course }: { readonly course: CourseView }) {
  const format = useFormat();
  const [slot, setSlot] = useState<SlotView | 'new' | null>(null);
  const wordsOf = (one: SlotView) =>
    say.slotWords(format.weekday(one.weekday), format.time(one.time), format.minutes(one.minutes));
  return (
    <div className="form-part">
      <h3>{say.slots}</h3>
      {course.slots.length === 0 && !isOver(course) && <p className="soft">{say.noSlots}</p>}
      <ul className="plain-list">
        {course.slots.map((one) => (
          <li key={one.id} className="apart-row">
            <span>
              {wordsOf(one)}{' '}
              <span className="faint">
                {one.ends
                  ? format.days(one.starts, one.ends)
                  : `${say.starts} ${format.day(one.starts, 'long')}`}
              </span>
            </span>
            <Button kind="plain" aria-label={say.changeOf(wordsOf(one))} onPress={() => setSlot(one)}>
              {say.change}
            </Button>
          </li>
        ))}
      </ul>
      {!isOver(course) && (
        <p className="form-row">
          <Button onPress={() => setSlot('new')}>{say.addSlot}</Button>
          <AddLesson course={course} />
        </p>
      )}
      <Events course={course} />
      {slot !== null && (
        <SlotForm course={course} slot={slot === 'new' ? null : slot} onClose={() => setSlot(null)} />
      )}
    </div>
  );
}

/** A lesson on a day of its own: the way of a course by arrangement. */
export function AddLesson({ course }: { readonly course: CourseView }) {
  const send = useCommand();
  const [adding, setAdding] = useState(false);
  return (
    <>
      <Button kind="plain" onPress={() => setAdding(true)}>
        {say.addLesson}
      </Button>
      {adding && (
        <LessonForm
          minutes={course.slots[0]?.minutes ?? 30}
          onClose={() => setAdding(false)}
          onAdd={async (lesson) => {
            const command: Command = { type: 'lesson.add', seen: course.revision, course: course.id, lesson };
            if (await send(command)) setAdding(false);
          }}
        />
      )}
    </>
  );
}

function SlotForm({
  course,
  slot,
  onClose,
}: {
  readonly course: CourseView;
  readonly slot: SlotView | null;
  readonly onClose: () => void;
}) {
  const format = useFormat();
  const send = useCommand();
  const [weekday, setWeekday] = useState<Weekday>(slot?.weekday ?? 1);
  const [time, setTime] = useState<string>(slot?.time ?? '16:00');
  const [minutes, setMinutes] = useState(String((slot ?? course.slots[0])?.minutes ?? 30));
  const [starts, setStarts] = useState<string>(slot?.starts ?? course.today);
  const [ends, setEnds] = useState<string>(slot?.ends ?? '');
  const [first, last, long] = [dayOrNull(starts), dayOrNull(ends), Number(minutes)];
  const right = first !== null && isTime(time) && isLessonLength(long) && (ends === '' || last !== null);
  const { student, members } = course.learner;
  const beside = useBeside({
    students: student === null ? members.map((one) => one.student) : [student],
    minutes: long,
    slot: slot?.id ?? null,
  });
  const dayOf = (chosen: string) => weekdays.find((day) => String(day) === chosen) ?? weekday;
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (first === null || !isTime(time) || !right) return;
    const reply = await send({
      type: 'slot.put',
      seen: course.revision,
      course: course.id,
      slot: { id: slot?.id ?? newId('slot'), weekday, time, minutes: long, starts: first, ends: last },
    });
    if (reply) onClose();
  };
  return (
    <Dialog title={say.slots} open onClose={onClose}>
      <form className="form" onSubmit={(event) => void submit(event)}>
        <div className="form-row">
          <SelectField
            label={say.weekday}
            value={String(weekday)}
            onValue={(value) => setWeekday(dayOf(value))}
            options={weekdays.map((day) => ({ value: String(day), label: format.weekday(day) }))}
          />
          <TextField label={say.time} type="time" value={time} onValue={setTime} />
          <LessonLengthField label={say.minutes} value={minutes} onValue={setMinutes} />
        </div>
        <BesideSiblings
          beside={beside}
          chosen={{ weekday: String(weekday), time }}
          onPlace={(place) => {
            setWeekday(dayOf(place.weekday));
            setTime(place.time);
          }}
        />
        <div className="form-row">
          <TextField label={say.starts} type="date" value={starts} onValue={setStarts} />
          <TextField label={say.ends} type="date" value={ends} onValue={setEnds} min={starts} />
        </div>
        <p className="form-end">
          <Button kind="primary" type="submit" isDisabled={!right}>
            {say.save}
          </Button>
          {slot && (
            <Button
              kind="plain"
              onPress={async () => {
                const command: Command = {
                  type: 'slot.remove',
                  seen: course.revision,
                  course: course.id,
                  slot: slot.id,
                };
                if (await send(command)) onClose();
              }}
            >
              {say.remove}
            </Button>
          )}
        </p>
      </form>
    </Dialog>
  );
}

type NewLesson = Extract<Command, { type: 'lesson.add' }>['lesson'];

function LessonForm({
  minutes: usual,
  onAdd,
  onClose,
}: {
  readonly minutes: number;
  readonly onAdd: (lesson: NewLesson) => Promise<void>;
  readonly onClose: () => void;
}) {
  const [day, setDay] = useState('');
  const [time, setTime] = useState('16:00');
  const [minutes, setMinutes] = useState(String(usual));
  const date = dayOrNull(day);
  const long = Number(minutes);
  const right = date !== null && isTime(time) && isLessonLength(long);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (date !== null && right)
      void onAdd({ id: newId('lesson'), date, time: time as PlainTime, minutes: long });
  };
  return (
    <Dialog title={say.addLesson} open onClose={onClose}>
      <form className="form" onSubmit={submit}>
        <div className="form-row">
          <TextField label={say.eventDate} type="date" value={day} onValue={setDay} />
          <TextField label={say.time} type="time" value={time} onValue={setTime} />
          <LessonLengthField label={say.minutes} value={minutes} onValue={setMinutes} />
        </div>
        <p className="form-end">
          <Button kind="primary" type="submit" isDisabled={!right}>
            {say.addLesson}
          </Button>
        </p>
      </form>
    </Dialog>
  );
}

function Events({ course }: { readonly course: CourseView }) {
  const format = useFormat();
  const send = useCommand();
  const [day, setDay] = useState('');
  const [title, setTitle] = useState('');
  const date = dayOrNull(day);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (date === null || title.trim() === '') return;
    const reply = await send({
      type: 'event.put',
      seen: course.revision,
      course: course.id,
      event: { id: newId('event'), date, title: title.trim() },
    });
    if (!reply) return;
    setDay('');
    setTitle('');
  };
  return (
    <form className="plan-events" onSubmit={(event) => void submit(event)}>
      <h3>{say.events}</h3>
      {course.events.length === 0 && <p className="soft">{say.noEvents}</p>}
      <ul className="plain-list">
        {course.events.map((event) => (
          <li key={event.id} className="apart-row">
            <span>
              {event.title} <span className="faint">{format.day(event.date, 'long')}</span>
            </span>
            <Button
              kind="plain"
              aria-label={say.removeOf(event.title)}
              onPress={() =>
                void send({ type: 'event.remove', seen: course.revision, course: course.id, event: event.id })
              }
            >
              {say.remove}
            </Button>
          </li>
        ))}
      </ul>
      <div className="form-row">
        <TextField label={say.eventTitle} value={title} onValue={setTitle} />
        <TextField label={say.eventDate} type="date" value={day} onValue={setDay} />
        <Button type="submit" isDisabled={date === null || title.trim() === ''}>
          {say.addEvent}
        </Button>
      </div>
    </form>
  );
}
