// Teaching mode: one segment large, its clock, levels at a touch, notes that are never lost.

import { lazy, Suspense, useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import { useLocation } from 'wouter';
import type { LessonSkillView, LessonView, OutcomeView } from '#contract';
import type { Level } from '#planning';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { SaveState } from '../../components/save-state.tsx';
import { useAwake } from '../../hooks/use-awake.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import { KeptNote } from './kept-note.tsx';
import { KeysDialog } from './keys-dialog.tsx';
import { formatClock, type SegmentId } from './lesson-clock.ts';
import { LessonDock } from './lesson-dock.tsx';
import { LessonHead } from './lesson-head.tsx';
import type { LessonAction } from './lesson-keys.ts';
import { PracticeField } from './practice-field.tsx';
import { SegmentShow, type Unfolded } from './segment-show.tsx';
import { SegmentStrip } from './segment-strip.tsx';
import { openingSegment, segmentBeside } from './shown-segment.ts';
import { SkillLevels } from './skill-levels.tsx';
import { TakeUp } from './take-up.tsx';
import { useLessonClock } from './use-lesson-clock.ts';
import type { LessonDesk } from './use-lesson-desk.ts';
import { useLessonKeys } from './use-lesson-keys.ts';
import { useSegmentLog } from './use-segment-log.ts';
import { useSingleKeys } from './use-single-keys.ts';

/** Loaded when a take is wanted: most lessons go by without one. */
const LessonTake = lazy(async () => ({
  default: (await import('../../takes/lesson-take.tsx')).LessonTake,
}));

export interface TeachingProps {
  readonly lesson: LessonView;
  readonly told: LessonView;
  readonly post: LessonDesk['post'];
}

export function Teaching({ lesson, told, post }: TeachingProps) {
  const [, go] = useLocation();
  const { say } = useSegmentLog(lesson.id, lesson, post);
  const clock = useLessonClock(lesson.id, lesson, (segment, seconds) => say(segment, { seconds }));
  const [chosen, setChosen] = useState(() => openingSegment(lesson.segments, clock.running));
  const [asksShare, setAsksShare] = useState<SegmentId | null>(null);
  const [unfolded, setUnfolded] = useState<Unfolded | null>(null);
  const [said, setSaid] = useState('');
  /** What a telephone shows: it has no room for both. */
  const [face, setFace] = useState<'show' | 'judge'>('show');
  const [sheet, setSheet] = useState<'keys' | 'takeUp' | 'take' | null>(null);
  const [single, setSingle] = useSingleKeys();
  // The whole lesson may pass without a touch.
  useAwake(lesson.status === 'planned', lesson.minutes + 15);

  const segment = lesson.segments.find((s) => s.id === chosen) ?? lesson.segments[0];
  const toldSegment = told.segments.find((s) => s.id === segment?.id) ?? segment;
  const running = lesson.segments.find((s) => s.id === clock.running);

  useEffect(() => {
    document.querySelector('.lesson-show')?.scrollTo({ top: 0 });
    document.querySelector('.lesson-judge')?.scrollTo({ top: 0 });
    window.scrollTo({ top: 0 });
    void [chosen, face];
  }, [chosen, face]);

  /** `after` is what was said of the segment before it. */
  const show = (id: SegmentId, after = '') => {
    const next = lesson.segments.find((s) => s.id === id);
    if (next) setSaid(`${after} ${words.lesson.nowAt(sentenceCase(next.title), next.minutes)}`.trim());
    setChosen(id);
    setAsksShare(null);
    setFace('show');
  };
  const turn = (by: 1 | -1, after = '') => {
    if (!segment) return;
    const beside = segmentBeside(lesson.segments, segment.id, by);
    if (beside) {
      if (clock.running === segment.id) clock.start(beside.id);
      show(beside.id, after);
    } else if (by === 1) {
      if (clock.running === segment.id) clock.pause();
      go(`/lesson/${lesson.id}/close`);
    }
  };
  /** Returns what there is to say of it. */
  const log = (outcome: OutcomeView, share: number | null): string => {
    if (!segment) return '';
    const seconds = clock.seconds(segment.id);
    say(segment.id, { outcome, share, ...(seconds > 0 ? { seconds } : {}) });
    return words.lesson.said(sentenceCase(segment.title), words.lesson.outcome[outcome]);
  };
  const judge = (outcome: OutcomeView) => {
    const done = log(outcome, null);
    setSaid(outcome === 'partly' ? `${done} ${words.lesson.howMuch}` : done);
    if (outcome === 'partly') setAsksShare(segment?.id ?? null);
    else turn(1, done);
  };
  const level = (skill: LessonSkillView, value: Level) => {
    post({
      type: 'observe',
      observation: skill.here?.observation ?? newId('observation'),
      course: lesson.course,
      student: lesson.learner.student,
      lesson: lesson.id,
      skill: skill.skill,
      level: value,
      note: '',
    });
    setSaid(words.lesson.said(sentenceCase(skill.title), words.levels[value].name.toLowerCase()));
  };
  const clockKey = () => {
    if (!segment) return;
    if (clock.running === segment.id) clock.pause();
    else clock.start(segment.id);
  };
  const write = (field: 'segment-note' | 'lesson-note') => {
    flushSync(() => setFace('judge'));
    document.getElementById(field)?.focus();
  };
  const act = (action: LessonAction) => {
    switch (action.kind) {
      case 'next':
        return segment && segmentBeside(lesson.segments, segment.id, 1) ? turn(1) : undefined;
      case 'previous':
        return turn(-1);
      case 'clock':
        return clockKey();
      case 'moveOn':
        return judge('finished');
      case 'carryOn':
        return judge('partly');
      case 'setAside':
        return judge('setAside');
      case 'notReached':
        return judge('skipped');
      case 'why':
        return setUnfolded((now) => (now === 'why' ? null : 'why'));
      case 'keys':
        return setSheet('keys');
      case 'note':
        return write('segment-note');
      case 'lessonNote':
        return write('lesson-note');
      case 'level': {
        const held = document.activeElement?.closest('[data-skill]')?.getAttribute('data-skill');
        const skill = segment?.skills.find((s) => s.skill === held) ?? segment?.skills[0];
        return skill ? level(skill, action.level) : undefined;
      }
    }
  };
  useLessonKeys(single, act);

  const atStart = segment?.kind === 'settlingIn';
  const at = lesson.segments.findIndex((s) => s.id === segment?.id);
  return (
    <div className="lesson" data-face={face}>
      <LessonHead lesson={lesson} onKeys={() => setSheet('keys')} />
      <SegmentStrip
        lesson={lesson}
        shown={segment?.id ?? ''}
        running={clock.running}
        seconds={clock.seconds}
        onShow={show}
      />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="lesson-show" aria-label={words.lesson.howTo} tabIndex={0}>
        {running && running.id !== segment?.id && (
          <p className="lesson-elsewhere">
            {words.lesson.runsAt(running.title, formatClock(clock.seconds(running.id)))}
            <Button kind="plain" className="lesson-tool" onPress={() => show(running.id)}>
              {words.lesson.goThere}
            </Button>
          </p>
        )}
        {lesson.status === 'taught' && <p className="lesson-taught">{words.lesson.taught}</p>}
        {!segment && <p className="lesson-nothing">{words.lesson.nothingPlanned}</p>}
        {segment && (
          <SegmentShow
            lesson={lesson}
            segment={segment}
            unfolded={unfolded ?? (atStart && lesson.previous ? 'lastTime' : null)}
            onUnfold={setUnfolded}
          />
        )}
        {segment?.kind === 'practice' && (
          <PracticeField
            told={told}
            post={(base, text) =>
              post({ type: 'lesson.write', lesson: lesson.id, field: 'practice', base, text })
            }
          />
        )}
        {segment?.kind !== 'practice' && (
          <div className="lesson-more">
            {segment && (
              <Button large className="lesson-take-up" onPress={() => setSheet('take')}>
                {words.takes.record}
              </Button>
            )}
            <Button large className="lesson-take-up" onPress={() => setSheet('takeUp')}>
              {words.lesson.takeUp}
            </Button>
          </div>
        )}
        <Throughout lesson={lesson} />
      </section>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="lesson-judge" aria-label={words.lesson.judge} tabIndex={0}>
        {segment && <SkillLevels segment={segment} onLevel={level} />}
        <div className="lesson-notes">
          {segment && toldSegment && (
            <KeptNote
              key={segment.id}
              id="segment-note"
              label={words.lesson.segmentNote}
              placeholder={words.lesson.notePlaceholder}
              told={{ field: `${segment.id} note`, stored: toldSegment.note, revision: told.courseRevision }}
              post={(base, text) => post({ type: 'segment.write', segment: segment.id, base, text })}
            />
          )}
          <KeptNote
            id="lesson-note"
            label={words.lesson.lessonNote}
            placeholder={words.lesson.lessonNotePlaceholder}
            told={{ field: `${lesson.id} note`, stored: told.note, revision: told.courseRevision }}
            post={(base, text) =>
              post({ type: 'lesson.write', lesson: lesson.id, field: 'note', base, text })
            }
          />
        </div>
      </section>
      <div className="lesson-foot">
        <div className="lesson-always">
          <Throughout lesson={lesson} />
          <div className="lesson-faces">
            {(['show', 'judge'] as const).map((one) => (
              <Button
                key={one}
                kind="plain"
                className="lesson-face"
                aria-pressed={face === one}
                onPress={() => setFace(one)}
              >
                {words.lesson.faces[one]}
              </Button>
            ))}
          </div>
          <SaveState />
        </div>
        {segment && (
          <LessonDock
            segment={segment}
            lessonMinutes={lesson.minutes}
            seconds={clock.seconds(segment.id)}
            runs={clock.running === segment.id}
            first={at <= 0}
            last={at === lesson.segments.length - 1}
            // Not any more once it was taken back, or said otherwise elsewhere.
            asksShare={asksShare === segment.id && segment.outcome === 'partly'}
            onClock={clockKey}
            onSetClock={(seconds) => {
              if (clock.running === segment.id) clock.pause();
              clock.set(segment.id, seconds);
            }}
            onTurn={turn}
            onOutcome={judge}
            onShare={(share) => turn(1, share === null ? '' : log('partly', share))}
          />
        )}
      </div>
      <p className="only-heard" aria-live="polite">
        {said}
      </p>
      <KeysDialog
        open={sheet === 'keys'}
        single={single}
        onSingle={setSingle}
        onClose={() => setSheet(null)}
      />
      {sheet === 'take' && segment && (
        <Suspense fallback={null}>
          <LessonTake lesson={lesson} segment={segment} onClose={() => setSheet(null)} />
        </Suspense>
      )}
      {sheet === 'takeUp' && <TakeUp lesson={lesson} onClose={() => setSheet(null)} onTaken={show} />}
    </div>
  );
}

/** Skills of every lesson. At the foot; on a telephone after the how-to. */
function Throughout({ lesson }: { readonly lesson: LessonView }) {
  if (lesson.ongoing.length === 0) return null;
  return (
    <p className="lesson-ongoing">
      <span className="lesson-ongoing-label">{words.lesson.ongoing}</span>{' '}
      {lesson.ongoing.map((skill) => sentenceCase(skill.title)).join(' · ')}
    </p>
  );
}
