// One weekly lesson: its day, time and length, and the days it runs between.

import { type FormEvent, useState } from 'react';
import { type CourseView, isLessonLength, type SlotView } from '#contract';
import { isDate, isTime, weekdays } from '#core';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { LessonLengthField } from '../../components/lesson-length-field.tsx';
import { Loaded } from '../../components/loading.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { useCourse } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { courseAddress } from '../day/course-address.ts';
import { BesideSiblings } from '../students/beside-siblings.tsx';
import { useBeside } from '../students/use-beside.ts';
import type { WeekSlot } from './week-layout.ts';
import '../../components/form.css';

const says = words.term.week;
const form = words.students.form;

interface SlotFormProps {
  readonly course: CourseView;
  readonly slot: SlotView;
  readonly students: WeekSlot['students'];
  readonly onClose: () => void;
}

function SlotForm({ course, slot, students, onClose }: SlotFormProps) {
  const send = useCommand();
  const format = useFormat();
  const [weekday, setWeekday] = useState(slot.weekday);
  const [time, setTime] = useState<string>(slot.time);
  const [minutes, setMinutes] = useState(String(slot.minutes));
  const [starts, setStarts] = useState<string>(slot.starts);
  const [ends, setEnds] = useState<string>(slot.ends ?? '');
  const length = Number(minutes);
  const lengthFault = isLessonLength(length) ? null : form.minutesWrong;
  const timeFault = isTime(time) ? null : form.timeMissing;
  const endsFault = isDate(ends) && ends < starts ? words.term.terms.endsEarly : null;
  const beside = useBeside({ students, minutes: length, slot: slot.id });
  const to = courseAddress({ learner: course.learner, course: course.id });

  async function save(event: FormEvent) {
    event.preventDefault();
    if (!isTime(time) || !isDate(starts) || lengthFault || endsFault) return;
    const changed = { id: slot.id, weekday, time, minutes: length, starts, ends: isDate(ends) ? ends : null };
    if (await send({ type: 'slot.put', seen: course.revision, course: course.id, slot: changed })) onClose();
  }

  return (
    <form className="form" onSubmit={save} noValidate>
      <div className="form-row form-top">
        <SelectField
          label={says.weekday}
          value={`${weekday}` as const}
          onValue={(chosen) => setWeekday(weekdays.find((d) => String(d) === chosen) ?? weekday)}
          options={weekdays.map((day) => ({ value: `${day}` as const, label: format.weekday(day) }))}
        />
        <TextField label={says.time} type="time" value={time} onValue={setTime} fault={timeFault} />
        <LessonLengthField
          label={says.minutes}
          step={5}
          unit={says.minutesUnit}
          value={minutes}
          onValue={setMinutes}
          fault={lengthFault}
        />
      </div>
      <BesideSiblings
        beside={beside}
        chosen={{ weekday: `${weekday}`, time }}
        onPlace={(place) => {
          setWeekday(weekdays.find((d) => String(d) === place.weekday) ?? weekday);
          setTime(place.time);
        }}
      />
      <div className="form-row form-top">
        <TextField label={says.starts} type="date" value={starts} onValue={setStarts} />
        <TextField
          label={says.ends}
          type="date"
          value={ends}
          onValue={setEnds}
          help={says.endsHelp}
          fault={endsFault}
        />
      </div>
      <div className="form-end">
        <Button kind="primary" type="submit">
          {says.save}
        </Button>
        <ButtonLink to={to} kind="plain">
          {says.toCourse}
        </ButtonLink>
        <Button
          kind="plain"
          onPress={async () => {
            const gone = {
              type: 'slot.remove',
              seen: course.revision,
              course: course.id,
              slot: slot.id,
            } as const;
            if (await send(gone)) onClose();
          }}
        >
          {says.remove}
        </Button>
      </div>
    </form>
  );
}

export function SlotDialog({ slot, onClose }: { readonly slot: WeekSlot; readonly onClose: () => void }) {
  const view = useCourse(slot.course);
  return (
    <Dialog title={says.dialog(slot.learner)} open onClose={onClose}>
      <Loaded view={view}>
        {(course) => {
          const found = course.slots.find((s) => s.id === slot.slot);
          return found ? (
            <SlotForm course={course} slot={found} students={slot.students} onClose={onClose} />
          ) : (
            <p>{says.none}</p>
          );
        }}
      </Loaded>
    </Dialog>
  );
}
