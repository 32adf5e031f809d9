// The review at the end of a lesson: seconds, because everything is proposed already.

import { useState } from 'react';
import { type LessonView, lessonLength, suggestPractice } from '#contract';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { LevelNote } from '../../components/level-note.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { closeCommands } from './close-commands.ts';
import { isLearning, minutesTaken, type Proposal, proposeClose } from './close-proposals.ts';
import { CloseRow } from './close-row.tsx';
import { KeptNote } from './kept-note.tsx';
import { MinutesField } from './minutes-field.tsx';
import { PracticeField } from './practice-field.tsx';
import { useLessonClock } from './use-lesson-clock.ts';
import type { LessonDesk } from './use-lesson-desk.ts';
import { useSegmentLog } from './use-segment-log.ts';
import { WhoWasThere } from './who-was-there.tsx';

type Change = Partial<Pick<Proposal, 'outcome' | 'share' | 'minutes'>>;

export interface CloseReviewProps {
  readonly lesson: LessonView;
  readonly told: LessonView;
  readonly post: LessonDesk['post'];
}

export function CloseReview({ lesson, told, post }: CloseReviewProps) {
  const format = useFormat();
  const { say: sayOf, shareById } = useSegmentLog(lesson.id, lesson, post);
  const clock = useLessonClock(lesson.id, lesson, (segment, seconds) => sayOf(segment, { seconds }));
  const [changes, setChanges] = useState<Readonly<Record<string, Change>>>({});
  const [lasted, setLasted] = useState(lesson.minutes);
  const say = words.lesson.closing;

  const secondsById = new Map<string, number>(
    lesson.segments.map((s) => [s.id, Math.max(clock.seconds(s.id), s.seconds ?? 0)]),
  );
  const timed = {
    minutes: lesson.minutes,
    segments: lesson.segments.map((s) => ({ ...s, seconds: secondsById.get(s.id) ?? null })),
  };
  const settled = proposeClose(timed, shareById).map((proposal): Proposal => {
    const change = changes[proposal.segment];
    if (!change) return proposal;
    const because = change.outcome === undefined && change.share === undefined ? proposal.because : 'byHand';
    const timed = change.minutes === undefined ? proposal.timed : 'hand';
    return { ...proposal, ...change, because, timed };
  });
  // Nobody practises what was not reached, also where the clock alone says so.
  const suggestion = suggestPractice(
    told.segments.map((s) => ({
      ...s,
      outcome: settled.find(({ segment }) => segment === s.id)?.outcome ?? s.outcome,
    })),
  );

  const close = () => {
    clock.pause();
    const suggestedPractice = lesson.practice === '' ? suggestion : null;
    const commands = closeCommands(lesson, {
      settled,
      secondsById,
      suggestedPractice,
      lasted: lasted === lesson.minutes ? null : lasted,
    });
    for (const command of commands) post(command);
    clock.forget();
    window.scrollTo({ top: 0 });
  };

  return (
    <div className="close">
      <section aria-labelledby="close-review">
        <h2 id="close-review" className="close-heading">
          {say.review}
          <span className="close-sum">
            {say.sum(format.minutes(minutesTaken(settled)), format.minutes(lesson.minutes))}
          </span>
        </h2>
        <ol className="close-rows">
          {lesson.segments.map((segment, at) => {
            const now = settled[at];
            return now ? (
              <CloseRow
                key={segment.id}
                segment={segment}
                settled={now}
                onChange={(change) =>
                  setChanges((all) => ({ ...all, [segment.id]: { ...all[segment.id], ...change } }))
                }
              />
            ) : null;
          })}
        </ol>
        <GoesOn lesson={lesson} settled={settled} />
      </section>
      <section className="close-side">
        <WhoWasThere lesson={lesson} post={post} />
        <LevelsRecorded lesson={lesson} />
        <PracticeField
          told={{ ...told, suggestedPractice: suggestion }}
          post={(base, text) =>
            post({ type: 'lesson.write', lesson: lesson.id, field: 'practice', base, text })
          }
        />
        <KeptNote
          label={say.note}
          placeholder={words.lesson.lessonNotePlaceholder}
          told={{ field: `${lesson.id} note`, stored: told.note, revision: told.courseRevision }}
          post={(base, text) => post({ type: 'lesson.write', lesson: lesson.id, field: 'note', base, text })}
        />
        <dl className="close-facts">
          <div>
            <dt>{say.lasted}</dt>
            <dd>
              <MinutesField label={say.lasted} minutes={lasted} {...lessonLength} onMinutes={setLasted}>
                {words.lesson.minutes}
              </MinutesField>
            </dd>
          </div>
          <div>
            <dt>{say.nextLesson}</dt>
            <dd>
              {lesson.next
                ? say.nextOn(format.day(lesson.next.date, 'short'), format.time(lesson.next.time))
                : say.noNext}
            </dd>
          </div>
        </dl>
      </section>
      <div className="close-do">
        <Button kind="primary" large className="close-button" onPress={close}>
          {say.do}
        </Button>
      </div>
    </div>
  );
}

function GoesOn({ lesson, settled }: { readonly lesson: LessonView; readonly settled: readonly Proposal[] }) {
  const say = words.lesson.closing;
  const titles = (outcome: Proposal['outcome']) =>
    lesson.segments
      .filter((s, at) => settled[at]?.outcome === outcome && (isLearning(s) || s.kind === 'revisit'))
      .map((s) => sentenceCase(s.title))
      .join(' · ');
  const lines = [
    { text: titles('partly'), say: say.carriesOver },
    { text: titles('setAside'), say: say.setAside },
    { text: titles('skipped'), say: say.notReached },
  ].filter(({ text }) => text !== '');
  return (
    <div className="close-goes-on" aria-live="polite">
      {lines.length === 0 ? (
        <p>{say.allDone}</p>
      ) : (
        lines.map((line) => <p key={line.text}>{line.say(line.text)}</p>)
      )}
    </div>
  );
}

function LevelsRecorded({ lesson }: { readonly lesson: LessonView }) {
  const say = words.lesson.closing;
  const recorded = new Map(
    lesson.segments.flatMap((s) => s.skills.filter((k) => k.here !== null).map((k) => [k.skill, k] as const)),
  );
  return (
    <div>
      <h2 className="close-heading">{say.levels}</h2>
      {recorded.size === 0 ? (
        <p className="soft">{say.noLevels}</p>
      ) : (
        <ul className="close-levels">
          {[...recorded.values()].map((skill) => (
            <li key={skill.skill}>
              <LevelNote level={skill.here?.level ?? null} size={32} decorative />
              <span>
                {sentenceCase(skill.title)}{' '}
                <span className="soft">
                  {skill.here && words.levels[skill.here.level].name.toLowerCase()}
                </span>
              </span>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
