import { type FormEvent, useState } from 'react';
import type { CourseView } from '#contract';
import { isDate, type PlainDate } from '#core';
import type { InstrumentId } from '#music';
import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { InstrumentSelect } from '../../components/instrument-select.tsx';
import { StageSelect } from '../../components/stage-select.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { isOver } from '../../score/is-over.ts';
import { words } from '../../words/index.ts';

const say = words.student.plan;

/** What a course is for, and its end: one of several courses may end while its student stays. */
export function PlanCourse({ course }: { readonly course: CourseView }) {
  const send = useCommand();
  const format = useFormat();
  const { learner, ended, id, revision: seen } = course;
  const [instrument, setInstrument] = useState<InstrumentId | ''>(learner.instrument);
  const [stage, setStage] = useState(learner.stage);
  const [lastDay, setLastDay] = useState<string>(course.today);
  const changed = instrument !== learner.instrument || stage !== learner.stage;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (instrument !== '' && changed)
      void send({ type: 'course.change', seen, course: id, instrument, stage });
  };
  const end = (on: PlainDate | null) => void send({ type: 'course.end', seen, course: id, on });
  return (
    <form className="form-part" onSubmit={submit}>
      <h3>{say.course}</h3>
      <div className="form-row">
        <div className="field field-broad">
          <InstrumentSelect label={say.instrument} value={instrument} onValue={setInstrument} />
        </div>
        <StageSelect label={say.stage} value={stage} onValue={setStage} />
        <Button type="submit" isDisabled={!changed || instrument === ''}>
          {say.save}
        </Button>
      </div>
      <p className="faint">{say.stageHelp}</p>
      {ended === null ? (
        <div className="form-row">
          <div className="field field-slim">
            <TextField label={say.lastDay} type="date" value={lastDay} onValue={setLastDay} />
          </div>
          <Button isDisabled={!isDate(lastDay)} onPress={() => isDate(lastDay) && end(lastDay)}>
            {say.end}
          </Button>
        </div>
      ) : (
        <div className="form-row">
          <p>{(isOver(course) ? words.student.ended : words.student.ends)(format.day(ended, 'long'))}</p>
          <Button onPress={() => end(null)}>{say.goOn}</Button>
        </div>
      )}
      {ended === null && <p className="faint">{say.lastDayHelp}</p>}
    </form>
  );
}
