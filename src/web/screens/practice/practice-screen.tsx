// Practice sheets for printing: one lesson's, or all of a day's or a week's in one go.

import { useMemo } from 'react';
import { useParams } from 'wouter';
import type { LessonView } from '#contract';
import { addDays, isDate, type PlainDate, weekdayOf } from '#core';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { Empty } from '../../components/empty.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { useLesson, useStudio } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { PracticeSheet } from './practice-sheet.tsx';
import { useDays, useLessons } from './use-days.ts';
import { usePracticeSheets } from './use-practice-sheets.ts';
import './practice.css';

const says = words.practice;

/** `/practice/lesson/:id` */
export function PracticeScreen() {
  const { id = '' } = useParams<{ id: string }>();
  const view = useLesson(id);
  const lessons = useMemo(() => (view.data ? [view.data] : []), [view.data]);
  const format = useFormat();
  if (!view.data)
    return (
      <Page title={says.title}>
        <Loaded view={view}>{() => null}</Loaded>
      </Page>
    );
  return (
    <Sheets
      title={says.title}
      lead={`${view.data.learner.name}, ${says.lessonOf(format.day(view.data.date, 'short'))}`}
      lessons={lessons}
      back={<ButtonLink to={`/lesson/${id}/close`}>{says.back}</ButtonLink>}
    />
  );
}

/** `/practice/day/:date`: every lesson of the day that was taught, has practice written, or something kept on its sheet. */
export function PracticeDayScreen() {
  const { date = '' } = useParams<{ date: string }>();
  const format = useFormat();
  const day = date as PlainDate; // an address that names no day finds no lessons
  const dates = useMemo(() => [day], [day]);
  return (
    <SheetsOfDays
      title={says.dayTitle}
      lead={isDate(date) ? format.day(day, 'full') : ''}
      dates={dates}
      nothing={says.nothing}
      back={
        <>
          <ButtonLink to={`/day/${date}`}>{says.backToDay}</ButtonLink>
          <ButtonLink to={`/practice/week/${date}`}>{says.wholeWeek}</ButtonLink>
        </>
      }
    />
  );
}

/** `/practice/week/:date`: the same for the seven days from Monday on around a day. */
export function PracticeWeekScreen() {
  const { date = '' } = useParams<{ date: string }>();
  const format = useFormat();
  const dates = useMemo(() => (isDate(date) ? weekAround(date) : []), [date]);
  const [monday] = dates;
  const sunday = dates.at(-1);
  return (
    <SheetsOfDays
      title={says.weekTitle}
      lead={monday !== undefined && sunday !== undefined ? format.days(monday, sunday) : ''}
      dates={dates}
      nothing={says.nothingInWeek}
      back={<ButtonLink to={`/practice/day/${date}`}>{says.backToSheetsOfDay}</ButtonLink>}
    />
  );
}

const weekAround = (date: PlainDate): readonly PlainDate[] =>
  Array.from({ length: 7 }, (_, i) => addDays(date, i + 1 - weekdayOf(date)));

/** Whether there is something to do until the next lesson. */
const hasSheet = ({ status, practice, kept }: LessonView): boolean =>
  status === 'taught' || practice.trim() !== '' || kept.length > 0;

interface SheetsOfDaysProps {
  readonly title: string;
  readonly lead: string;
  readonly dates: readonly PlainDate[];
  readonly nothing: string;
  readonly back: React.ReactNode;
}

function SheetsOfDays({ title, lead, dates, nothing, back }: SheetsOfDaysProps) {
  const days = useDays(dates);
  const lessons = useLessons(
    days.given.flatMap(({ lessons }) =>
      lessons.filter(({ status }) => status === 'taught' || status === 'planned').map(({ id }) => id),
    ),
  );
  const set = useMemo(() => lessons.given.filter(hasSheet), [lessons.given]);
  if (days.waiting !== undefined || lessons.waiting !== undefined)
    return (
      <Page title={title} actions={back}>
        {days.waiting !== undefined ? (
          <Loaded view={days.waiting}>{() => null}</Loaded>
        ) : lessons.waiting !== undefined ? (
          <Loaded view={lessons.waiting}>{() => null}</Loaded>
        ) : null}
      </Page>
    );
  if (set.length === 0)
    return (
      <Page title={title}>
        <Empty sentence={nothing} action={back} />
      </Page>
    );
  return <Sheets title={title} lead={lead} lessons={set} back={back} />;
}

interface SheetsProps {
  readonly title: string;
  readonly lead: string;
  readonly lessons: readonly LessonView[];
  readonly back: React.ReactNode;
}

function Sheets({ title, lead, lessons, back }: SheetsProps) {
  const paper = useStudio().data?.paper === 'Letter' ? 'letter' : 'a4';
  const { practices, answers, total } = usePracticeSheets(lessons, paper);
  const isReady = answers.size >= total;
  return (
    <Page
      title={title}
      lead={lead}
      actions={
        <>
          {back}
          <Button kind="primary" isDisabled={!isReady} onPress={() => window.print()}>
            {lessons.length === 1 ? says.print : says.printAll(lessons.length)}
          </Button>
        </>
      }
    >
      <div className={`practice-screen practice-${paper}`}>
        {total > 0 && (
          <div className="practice-progress no-print">
            <progress max={total} value={answers.size} aria-label={says.drawing(answers.size, total)} />
            <p role="status">{isReady ? says.ready : says.drawing(answers.size, total)}</p>
          </div>
        )}
        {practices.map(({ lesson, materials }) => (
          <PracticeSheet
            key={lesson.id}
            lesson={lesson}
            materials={materials}
            answers={answers}
            isAlone={practices.length === 1}
          />
        ))}
      </div>
    </Page>
  );
}
