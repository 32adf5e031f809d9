// What if…: a teacher tries days away, another lesson length, another unit or another deadline, sees the course as it would
// be, and keeps it or leaves it.

import { type FormEvent, useEffect, useMemo, useRef, useState } from 'react';
import { type CourseView, isLessonLength } from '#contract';
import type { Id, PlainDate } from '#core';
import { sendTogether } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { LessonLengthField } from '../../components/lesson-length-field.tsx';
import { useUnits } from '../../hooks/use-view.ts';
import { newId } from '../../new-id.ts';
import { CourseScore } from '../../score/course-score.tsx';
import { words } from '../../words/index.ts';
import { Imagining } from './imagining.tsx';
import { useWhatIf } from './use-what-if.ts';
import { dayOrNull, lessonsWithin, type Trial, trialToCommands } from './what-if-commands.ts';

const say = words.student.whatIf;

export function WhatIfPanel({
  course,
  onClose,
}: {
  readonly course: CourseView;
  readonly onClose: () => void;
}) {
  const units = useUnits().data?.units ?? [];
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const [minutes, setMinutes] = useState('');
  const [unit, setUnit] = useState('');
  const [strand, setStrand] = useState<string>(course.strands[0]?.id ?? '');
  const [deadlines, setDeadlines] = useState<ReadonlyMap<Id<'strand'>, string>>(new Map());
  const [courseUnit] = useState(() => newId('course-unit'));
  const { imagined, asking, ask, forget } = useWhatIf(course);
  const title = useRef<HTMLHeadingElement>(null);
  // It opens in the place of the score, away from the button that opened it.
  useEffect(() => title.current?.focus({ preventScroll: true }), []);

  const away = useMemo(() => {
    // One day alone is a day away.
    const [first, last] = [dayOrNull(from), dayOrNull(to === '' ? from : to)];
    return first !== null && last !== null && first <= last ? { from: first, to: last } : null;
  }, [from, to]);
  const within = away ? lessonsWithin(course, away.from, away.to).length : 0;
  const backwards = away === null && dayOrNull(from) !== null && dayOrNull(to) !== null;
  const wanted = Number(minutes);
  const isLength = isLessonLength(wanted);
  const chosenUnit = units.find((one) => one.id === unit);
  const chosenStrand = course.strands.find((one) => one.id === strand);
  const trial: Trial = {
    away,
    minutes: isLength ? wanted : null,
    unit: chosenUnit && chosenStrand ? { unit: chosenUnit.id, strand: chosenStrand.id, courseUnit } : null,
    deadlines: new Map(
      [...deadlines].flatMap(([id, text]): [Id<'strand'>, PlainDate | null][] => {
        const day = text === '' ? null : dayOrNull(text);
        return text !== '' && day === null ? [] : [[id, day]];
      }),
    ),
  };
  const commands = trialToCommands(course, trial, say.awayReason);
  const slotsNow = [...new Set(course.slots.map((slot) => slot.minutes))].join(', ');
  const change = (set: () => void) => {
    forget();
    set();
  };

  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (commands.length > 0 && !asking) void ask(commands);
  };
  return (
    <section className="what-if no-print" aria-labelledby="what-if-title">
      <header className="what-if-head">
        <h2 id="what-if-title" ref={title} tabIndex={-1}>
          {say.title}
        </h2>
        <p className="soft">{say.lead}</p>
      </header>
      <form className="what-if-form" onSubmit={submit}>
        <fieldset>
          <legend>{say.away}</legend>
          <TextField
            label={say.awayFrom}
            type="date"
            value={from}
            onValue={(v) => change(() => setFrom(v))}
            fault={from === '' && to !== '' ? words.term.terms.dayMissing : null}
          />
          <TextField
            label={say.awayTo}
            type="date"
            value={to}
            onValue={(v) => change(() => setTo(v))}
            min={from}
            help={away ? (within === 0 ? say.noLessons : say.lessons(within)) : null}
            fault={backwards ? words.term.terms.endsEarly : null}
          />
        </fieldset>
        {course.slots.length > 0 && (
          <fieldset>
            <legend>{say.length}</legend>
            <LessonLengthField
              label={say.lengthLabel(slotsNow)}
              value={minutes}
              onValue={(v) => change(() => setMinutes(v))}
              help={say.lengthHelp}
              fault={minutes === '' || isLength ? null : words.score.dialog.lengthFault}
            />
          </fieldset>
        )}
        <fieldset>
          <legend>{say.unit}</legend>
          <SelectField
            label={say.unitLabel}
            value={unit}
            onValue={(v) => change(() => setUnit(v))}
            options={[
              { value: '', label: say.noUnit },
              ...units
                .filter((one) => !one.retired)
                .map((one) => ({ value: one.id as string, label: one.title })),
            ]}
          />
          <SelectField
            label={words.student.give.strand}
            value={strand}
            onValue={(v) => change(() => setStrand(v))}
            options={course.strands.map((one) => ({ value: one.id as string, label: one.name }))}
          />
        </fieldset>
        <fieldset>
          <legend>{say.deadline}</legend>
          {course.strands.map((one) => (
            <TextField
              key={one.id}
              label={say.deadlineLabel(one.name)}
              type="date"
              value={deadlines.get(one.id) ?? one.deadline ?? ''}
              onValue={(v) => change(() => setDeadlines(new Map([...deadlines, [one.id, v]])))}
            />
          ))}
        </fieldset>
        <p className="what-if-deeds">
          <Button
            kind={imagined ? 'quiet' : 'primary'}
            type="submit"
            isDisabled={commands.length === 0}
            pending={asking}
          >
            {say.show}
          </Button>
          {!imagined && (
            <Button kind="plain" onPress={onClose}>
              {say.leave}
            </Button>
          )}
          {commands.length === 0 && <span className="faint">{say.nothing}</span>}
        </p>
      </form>
      {imagined && (
        <Imagining
          view={imagined.view}
          onKeep={async () => {
            if (await sendTogether(imagined.commands, say.kept)) onClose();
          }}
          onLeave={onClose}
        />
      )}
      {imagined && <CourseScore course={imagined.view.course} mode="preview" />}
    </section>
  );
}
