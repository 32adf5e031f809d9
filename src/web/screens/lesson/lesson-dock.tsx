// What the thumb reaches: the clock, what came of the segment, and the way to the next.

import { useState } from 'react';
import type { LessonSegmentView, OutcomeView } from '#contract';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { isLearning } from './close-proposals.ts';
import { formatClock, isRunOn } from './lesson-clock.ts';
import './lesson-dock.css';

export interface LessonDockProps {
  readonly segment: LessonSegmentView;
  readonly lessonMinutes: number;
  readonly seconds: number;
  readonly runs: boolean;
  readonly first: boolean;
  readonly last: boolean;
  /** The share of what was done is being asked for. */
  readonly asksShare: boolean;
  readonly onClock: () => void;
  readonly onSetClock: (seconds: number) => void;
  readonly onTurn: (by: 1 | -1) => void;
  readonly onOutcome: (outcome: OutcomeView) => void;
  readonly onShare: (share: number | null) => void;
}

export function LessonDock(props: LessonDockProps) {
  const { segment, seconds, first, last, onTurn } = props;
  const over = seconds > segment.minutes * 60;
  return (
    <section className="dock" aria-label={words.lesson.dock}>
      <div className="dock-time" data-over={over} aria-hidden="true">
        <span style={{ width: `${Math.min(100, (100 * seconds) / (segment.minutes * 60))}%` }} />
      </div>
      <div className="dock-clock">
        <Button large className="dock-button" isDisabled={first} onPress={() => onTurn(-1)}>
          <span aria-hidden="true">‹</span> <span className="dock-word">{words.lesson.previous}</span>
        </Button>
        <Clock {...props} over={over} />
        <Button large className="dock-button" onPress={() => onTurn(1)}>
          <span className={last ? '' : 'dock-word'}>{last ? words.lesson.close : words.lesson.next}</span>{' '}
          <span aria-hidden="true">›</span>
        </Button>
      </div>
      <Outcomes {...props} />
    </section>
  );
}

function Clock({
  segment,
  lessonMinutes,
  seconds,
  runs,
  over,
  onClock,
  onSetClock,
}: LessonDockProps & { readonly over: boolean }) {
  const format = useFormat();
  const planned = format.minutes(segment.minutes);
  const ranOn = isRunOn(seconds, segment.minutes, lessonMinutes);
  return (
    <div className="clock" data-over={over}>
      <p className="clock-face" role="timer" aria-label={words.lesson.clock}>
        <span className="clock-figure">{formatClock(seconds)}</span>{' '}
        <span className="clock-planned">{words.lesson.ofPlanned(planned)}</span>
      </p>
      {/* The clock itself is silent: only that a segment's minutes are over is worth a word, once. */}
      <p className="only-heard" role="status">
        {runs && over && words.lesson.over(sentenceCase(segment.title), planned)}
      </p>
      {ranOn ? (
        <Button large className="dock-button" onPress={() => onSetClock(segment.minutes * 60)}>
          {words.lesson.setTo(planned)}
        </Button>
      ) : (
        <Button large className="dock-button clock-button" onPress={onClock}>
          {runs ? words.lesson.pause : words.lesson.start}
        </Button>
      )}
    </div>
  );
}

function Outcomes({ segment, asksShare, onOutcome, onShare }: LessonDockProps) {
  if (asksShare) return <Shares segment={segment} onShare={onShare} />;
  const choices: readonly (readonly [OutcomeView, string])[] = isLearning(segment)
    ? [
        ['finished', words.lesson.moveOn],
        ['partly', words.lesson.carryOn],
        ['setAside', words.lesson.setAside],
        ['skipped', words.lesson.notReached],
      ]
    : [
        ['finished', words.lesson.moveOn],
        ['skipped', words.lesson.notReached],
      ];
  return (
    <fieldset className="dock-outcomes">
      <legend className="only-heard">{words.lesson.outcomes}</legend>
      {choices.map(([outcome, name]) => (
        <Button
          key={outcome}
          large
          kind={outcome === 'finished' && segment.outcome === null ? 'primary' : 'quiet'}
          className="dock-button dock-outcome"
          aria-pressed={segment.outcome === outcome}
          onPress={() => onOutcome(outcome)}
        >
          {name}
        </Button>
      ))}
    </fieldset>
  );
}

/** A second touch of the same finger is not an answer. */
const settleMilliseconds = 400;

function Shares({ segment, onShare }: Pick<LessonDockProps, 'segment' | 'onShare'>) {
  const [since] = useState(() => performance.now());
  const answer = (share: number | null) => {
    if (performance.now() - since > settleMilliseconds) onShare(share);
  };
  const shares = segment.completes ? [0.25, 0.5, 0.75] : [0.25, 0.5, 0.75, 1];
  return (
    <fieldset className="dock-outcomes">
      <legend className="only-heard">{words.lesson.howMuch}</legend>
      <span className="dock-question" aria-hidden="true">
        {words.lesson.howMuch}
      </span>
      <Button large className="dock-button" onPress={() => answer(null)}>
        {words.lesson.byClock}
      </Button>
      {shares.map((share) => (
        <Button key={share} large className="dock-button" onPress={() => answer(share)}>
          {words.lesson.share(share)}
        </Button>
      ))}
    </fieldset>
  );
}
