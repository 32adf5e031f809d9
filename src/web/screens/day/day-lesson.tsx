// One lesson on the day's programme.

import { Link } from 'wouter';
import type { PlainDate } from '#core';
import { sentenceCase } from '../../app/sentence-case.ts';
import { ButtonLink } from '../../components/button-link.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { courseAddress, giveAddress } from './course-address.ts';
import type { DayRow } from './day-programme.ts';
import { LessonMenu } from './lesson-menu.tsx';
import { SegmentLine, SegmentMark } from './segment-line.tsx';

export interface DayLessonRowProps {
  readonly row: Extract<DayRow, { kind: 'lesson' }>;
  readonly date: PlainDate;
}

export function DayLessonRow({ row, date }: DayLessonRowProps) {
  const { lesson, place, minute, teach } = row;
  const format = useFormat();
  const { learner, segments } = lesson;
  const off = place === 'off';
  const toClose = place === 'over' && lesson.status === 'planned';
  const wantsUnit = lesson.wantsUnit && !toClose;
  const who = [
    learner.age === null ? null : (learner.group === null ? words.day.age : words.day.youngest)(learner.age),
    learner.instrumentName,
    words.stageNames[learner.stage].toLowerCase(),
    words.day.number(lesson.number),
  ].filter((part) => part !== null);

  const came = [
    lesson.status === 'taught' ? words.day.status.taught : '',
    lesson.absent.length > 0 ? words.lesson.away.without(lesson.absent) : '',
  ].filter(Boolean);

  return (
    <article className="day-lesson" data-place={place} aria-labelledby={`name-${lesson.id}`}>
      <div className="day-when">
        <time className="day-time">{format.time(lesson.time)}</time>
        <span className="day-length">{format.minutes(lesson.minutes)}</span>
      </div>
      <div className="day-what">
        <header className="day-head">
          <h2 className="day-name" id={`name-${lesson.id}`}>
            <Link href={courseAddress(lesson)}>{learner.name}</Link>
          </h2>
          <p className="day-who">{who.join(' · ')}</p>
          {place === 'now' && minute !== null && (
            <p className="day-now">{words.day.nowMinute(minute, lesson.minutes)}</p>
          )}
          {came.length > 0 && <p className="day-who">{came.join(' · ')}</p>}
        </header>
        {off ? (
          <p className="day-off">{words.day.offWith(lesson.status, lesson.reason)}</p>
        ) : (
          <>
            {segments.length === 0 ? (
              <p className="day-who">{words.day.nothingPlanned}</p>
            ) : (
              <>
                <SegmentLine segments={segments} minutes={lesson.minutes} minute={minute} />
                <ol className="day-segments" aria-label={words.day.segmentsOf(learner.name)}>
                  {segments.map((segment, at) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: segments of a day have no id, and are redrawn whole
                    <li key={at} className="day-segment" data-kind={segment.kind}>
                      {(segment.ink !== null || segment.kind === 'revisit') && (
                        <span className="day-segment-ink" aria-hidden="true">
                          <SegmentMark segment={segment} />
                        </span>
                      )}
                      <span className="day-segment-minutes">{segment.minutes}</span>{' '}
                      {sentenceCase(segment.title)}
                      {segment.kind === 'revisit' && (
                        <span className="only-heard">, {words.day.revisit}</span>
                      )}
                    </li>
                  ))}
                </ol>
              </>
            )}
            {(lesson.lastNote !== '' || lesson.lastAbsent.length > 0) && (
              <p className="day-last">
                <span className="day-last-label">{words.day.lastTime}</span>{' '}
                {[
                  lesson.lastAbsent.length > 0 ? words.lesson.away.without(lesson.lastAbsent) : '',
                  lesson.lastNote,
                ]
                  .filter(Boolean)
                  .join(' · ')}
              </p>
            )}
          </>
        )}
        {lesson.decisions.length > 0 && (
          <ul className="day-decisions">
            {lesson.decisions.map((sentence, at) => (
              <li key={sentence}>
                <Link href={toClose && at === 0 ? `/lesson/${lesson.id}/close` : courseAddress(lesson)}>
                  {sentence}
                </Link>
              </li>
            ))}
          </ul>
        )}
      </div>
      <div className="day-do no-print">
        {wantsUnit && (
          <ButtonLink to={giveAddress(lesson)} kind={teach ? 'primary' : 'quiet'} large>
            {words.student.units.give}
            <span className="only-heard"> {words.day.giveTo(learner.name)}</span>
          </ButtonLink>
        )}
        {!off && (
          <ButtonLink
            to={`/lesson/${lesson.id}${toClose ? '/close' : ''}`}
            kind={teach && !wantsUnit ? 'primary' : 'quiet'}
            large
          >
            {teach ? words.day.teach : toClose ? words.day.close : words.day.open}
            <span className="only-heard"> {learner.name}</span>
          </ButtonLink>
        )}
        <LessonMenu lesson={lesson} date={date} />
      </div>
    </article>
  );
}
