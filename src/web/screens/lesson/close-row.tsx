// One segment in the review: what it took and what came of it.

import { Radio, RadioGroup } from 'react-aria-components';
import type { LessonSegmentView, OutcomeView } from '#contract';
import { sentenceCase } from '../../app/sentence-case.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { isLearning, type Proposal } from './close-proposals.ts';
import { mostSeconds } from './lesson-clock.ts';
import { MinutesField } from './minutes-field.tsx';

export interface CloseRowProps {
  readonly segment: LessonSegmentView;
  readonly settled: Proposal;
  readonly onChange: (change: Partial<Pick<Proposal, 'outcome' | 'share' | 'minutes'>>) => void;
}

const outcomes: readonly OutcomeView[] = ['finished', 'partly', 'setAside', 'skipped'];
const mostMinutes = Math.floor(mostSeconds / 60);
const shares = [0.25, 0.5, 0.75, 1] as const;

export function CloseRow({ segment, settled, onChange }: CloseRowProps) {
  const say = words.lesson.closing;
  const format = useFormat();
  const because = say.because[settled.because];
  const framing = !isLearning(segment) && segment.kind !== 'revisit';
  return (
    <li className="close-row" data-frame={framing}>
      <div className="close-what">
        <p className="close-title">{sentenceCase(segment.title)}</p>
        {!framing && because !== '' && <p className="close-because">{because}</p>}
      </div>
      <MinutesField
        label={say.minutesOf(segment.title)}
        minutes={settled.minutes}
        least={0}
        most={mostMinutes}
        onMinutes={(minutes) => onChange({ minutes })}
      >
        <span aria-hidden="true">{say.ofMinutes(segment.minutes)}</span>
        <span className="only-heard">{say.plannedMinutes(format.minutes(segment.minutes))}</span>
      </MinutesField>
      {!framing && (
        <div className="close-outcome">
          <RadioGroup
            className="close-choices"
            aria-label={say.outcomeOf(segment.title)}
            orientation="horizontal"
            value={settled.outcome}
            onChange={(value) => {
              const outcome = outcomes.find((o) => o === value);
              if (outcome)
                onChange({ outcome, share: outcome === 'partly' ? (segment.completes ? 0.5 : 1) : null });
            }}
          >
            {outcomes
              .filter((o) => isLearning(segment) || o === 'finished' || o === 'skipped')
              .map((outcome) => (
                <Radio key={outcome} value={outcome} className="close-choice">
                  {say.choice[outcome]}
                </Radio>
              ))}
          </RadioGroup>
          {settled.outcome === 'partly' && (
            <RadioGroup
              className="close-choices close-shares"
              aria-label={say.shareOf(segment.title)}
              orientation="horizontal"
              value={settled.share === null ? null : String(settled.share)}
              onChange={(value) => onChange({ share: Number(value) })}
            >
              {shares
                .filter((share) => share < 1 || !segment.completes)
                .map((share) => (
                  <Radio key={share} value={String(share)} className="close-choice">
                    {words.lesson.share(share)}
                  </Radio>
                ))}
            </RadioGroup>
          )}
        </div>
      )}
    </li>
  );
}
