// Practice sheets for printing: one lesson's, or all of a day's in one go.

import { useQueries } from '@tanstack/react-query';
import { useMemo } from 'react';
import { useParams } from 'wouter';
import type { LessonView } from '#contract';
import { getView } from '../../app/api.ts';
import { keys } from '../../app/query-keys.ts';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { Empty } from '../../components/empty.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { useDay, useLesson, useStudio } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { PracticeSheet } from './practice-sheet.tsx';
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

/** `/practice/day/:date`: every lesson of the day that was taught, or has practice written. */
export function PracticeDayScreen() {
  const { date = '' } = useParams<{ date: string }>();
  const day = useDay(date);
  const format = useFormat();
  const ids = (day.data?.lessons ?? [])
    .filter(({ status }) => status === 'taught' || status === 'planned')
    .map(({ id }) => id);
  const lessons = useQueries({
    queries: ids.map((id) => ({
      queryKey: keys.lesson(id),
      queryFn: () => getView<LessonView>(`/api/lessons/${encodeURIComponent(id)}`),
    })),
    combine: (views) => ({
      isLoading: views.some((view) => view.data === undefined && view.error === null),
      given: views.flatMap((view) => (view.data ? [view.data] : [])),
    }),
  });
  const set = useMemo(
    () => lessons.given.filter(({ status, practice }) => status === 'taught' || practice.trim() !== ''),
    [lessons.given],
  );
  const back = <ButtonLink to={`/day/${date}`}>{says.backToDay}</ButtonLink>;
  if (!day.data || lessons.isLoading)
    return (
      <Page title={says.dayTitle} actions={back}>
        <Loaded view={day}>{() => null}</Loaded>
      </Page>
    );
  if (set.length === 0)
    return (
      <Page title={says.dayTitle}>
        <Empty sentence={says.nothing} action={back} />
      </Page>
    );
  return <Sheets title={says.dayTitle} lead={format.day(day.data.date, 'full')} lessons={set} back={back} />;
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
      <div className={`practice practice-${paper}`}>
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
