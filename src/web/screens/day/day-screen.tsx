// The day's lessons in order down the page like a programme, with what to set up and what wants a decision.

import { useEffect } from 'react';
import { useLocation, useParams } from 'wouter';
import type { DayView } from '#contract';
import { addMinutes, isDate, type PlainDate, type PlainTime } from '#core';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { Empty } from '../../components/empty.tsx';
import { TextField } from '../../components/field.tsx';
import { Loaded } from '../../components/loading.tsx';
import { NextStep } from '../../components/next-step.tsx';
import { Page } from '../../components/page.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { useDay, useStudio } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { DayLessonRow } from './day-lesson.tsx';
import { dayExtent, dayProgramme } from './day-programme.ts';
import { SetUp } from './set-up.tsx';
import type { StudioNow } from './studio-now.ts';
import { useStudioNow } from './use-studio-now.ts';
import './day.css';
import './day-print.css';

const addressOf = (date: PlainDate) => `/day/${date}`;

export function DayScreen() {
  const asked = useParams<{ date?: string }>().date;
  const now = useStudioNow();
  if (!now) return null;
  if (asked !== undefined && !isDate(asked))
    return (
      <Page title={words.day.title}>
        <Empty
          sentence={words.day.notADay}
          action={<ButtonLink to="/">{words.frame.notFound.action}</ButtonLink>}
        />
      </Page>
    );
  return <DayOf date={asked ?? now.date} now={now} />;
}

function DayOf({ date, now }: { readonly date: PlainDate; readonly now: StudioNow }) {
  const view = useDay(date);
  const format = useFormat();
  const [, go] = useLocation();
  const { before = null, after = null } = view.data ?? {};

  useEffect(() => {
    const hear = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey || event.defaultPrevented) return;
      if (
        event.target instanceof HTMLElement &&
        event.target.closest('input, textarea, select, [role=menu], [role=dialog]')
      )
        return;
      const to = event.key === 'ArrowLeft' ? before : event.key === 'ArrowRight' ? after : null;
      if (to) go(addressOf(to));
    };
    window.addEventListener('keydown', hear);
    return () => window.removeEventListener('keydown', hear);
  }, [before, after, go]);

  const extent = view.data ? dayExtent(view.data.lessons) : null;
  const timeAt = (minute: number) => format.time(addMinutes('00:00' as PlainTime, minute));
  const decisions = view.data?.lessons.reduce((sum, l) => sum + l.decisions.length, 0) ?? 0;
  const lead = extent && (
    <>
      {words.day.sum(extent.lessons, format.minutes(extent.minutes), timeAt(extent.from), timeAt(extent.to))}
      {decisions > 0 && ` · ${words.day.wantDecision(decisions)}`}
    </>
  );

  return (
    <Page
      title={format.day(date, 'full')}
      heading={
        <h1 className="day-title">
          {format.day(date, 'weekday')} <span className="day-title-date">{format.day(date, 'long')}</span>
        </h1>
      }
      lead={lead}
      actions={
        <>
          <Button
            className="day-touch"
            isDisabled={before === null}
            aria-label={words.day.previous}
            onPress={() => before && go(addressOf(before))}
          >
            ←
          </Button>
          <Button
            className="day-touch"
            isDisabled={after === null}
            aria-label={words.day.next}
            onPress={() => after && go(addressOf(after))}
          >
            →
          </Button>
          <div className="day-pick">
            <TextField
              label={words.day.goToDate}
              labelHidden
              type="date"
              value={date}
              onValue={(text) => isDate(text) && go(addressOf(text))}
            />
          </div>
          {date !== now.date && (
            <ButtonLink to="/">
              <span className="day-touch-text">{words.day.today}</span>
            </ButtonLink>
          )}
          {extent && <ButtonLink to={`/practice/day/${date}`}>{words.practice.linkDay}</ButtonLink>}
          {extent && <Button onPress={() => window.print()}>{words.day.print}</Button>}
        </>
      }
    >
      <Loaded view={view}>
        {(day) =>
          day.lessons.length === 0 ? (
            <>
              <NextStep after="day" />
              <NoLessons day={day} />
            </>
          ) : (
            <>
              {day.date === now.date && <NextStep after="lessons" />}
              <Programme day={day} now={now} key={day.date} />
            </>
          )
        }
      </Loaded>
    </Page>
  );
}

function Programme({ day, now }: { readonly day: DayView; readonly now: StudioNow }) {
  const format = useFormat();
  return (
    <div className="day">
      <ol className="day-programme" aria-label={words.day.programme}>
        {dayProgramme(day.date, day.lessons, now).map((row) =>
          row.kind === 'lesson' ? (
            <li key={row.lesson.id}>
              <DayLessonRow row={row} date={day.date} />
            </li>
          ) : (
            <li
              key={`after ${row.after}`}
              className="day-between"
              data-minutes={Math.sign(row.minutes)}
              data-long={row.minutes >= 15}
            >
              <span className={row.minutes === 0 ? 'only-heard' : undefined}>
                {row.minutes === 0
                  ? words.day.backToBack
                  : row.minutes > 0
                    ? words.day.free(format.stretch(row.minutes))
                    : words.day.overlap(format.minutes(-row.minutes))}
              </span>
              {row.now && (
                <span className="day-now">
                  {words.day.place.now} {format.time(now.time)}
                </span>
              )}
            </li>
          ),
        )}
      </ol>
      <SetUp day={day} begun={day.date === now.date && day.lessons.some((l) => l.time <= now.time)} />
    </div>
  );
}

function NoLessons({ day }: { readonly day: DayView }) {
  const studio = useStudio().data;
  const format = useFormat();
  const to = day.after ?? day.before;
  if (studio?.counts.courses === 0)
    return (
      <Empty
        sentence={words.day.emptyStudio}
        action={
          <ButtonLink to="/students" kind="primary" large>
            {words.day.addStudents}
          </ButtonLink>
        }
      />
    );
  const { term } = words.welcome.start.steps;
  if (studio?.counts.terms === 0)
    return (
      <Empty
        sentence={term.text}
        action={
          <ButtonLink to="/term?add" kind="primary" large>
            {term.action}
          </ButtonLink>
        }
      />
    );
  return (
    <Empty
      sentence={day.holiday ? words.day.emptyHoliday(day.holiday) : words.day.emptyDay}
      action={
        to ? (
          <ButtonLink to={addressOf(to)} kind="primary" large>
            {words.day.nextDay(format.day(to, 'full'))}
          </ButtonLink>
        ) : (
          <ButtonLink to="/term" kind="primary" large>
            {words.day.toTerm}
          </ButtonLink>
        )
      }
    />
  );
}
