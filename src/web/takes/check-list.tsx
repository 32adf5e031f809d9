// What a take shows of the checks it was played for: each thing listened for was heard, was not, or could not be heard, with the
// passages that show it. Never a mark: the level is for the teacher to judge.

import type { HeardTake, ListenableCheckView } from '#contract';
import { type CheckSpec, type Evidence, judgeCheck, type Passage } from '#listening';
import { sentenceCase } from '../app/sentence-case.ts';
import { useDescribeCheck } from '../hooks/use-describe-check.ts';
import { useLocale } from '../hooks/use-format.ts';
import { words } from '../words/index.ts';
import { formatFigure } from './format-figure.ts';
import { PassageList } from './passage-list.tsx';
import './check-list.css';

const say = words.listenFor;

export interface CheckListProps {
  readonly checks: readonly ListenableCheckView[];
  readonly heard: HeardTake;
  readonly evidence: Evidence;
  readonly onPassage: (passage: Passage) => void;
}

export function CheckList({ checks, heard, evidence, onPassage }: CheckListProps) {
  if (checks.length === 0) return null;
  return (
    <section className="take-checks" aria-label={say.checks}>
      <h3>{say.checks}</h3>
      <ul>
        {checks.map((check) => (
          <li key={check.skill + check.lookFor} className="take-check">
            <p className="take-check-skill">{sentenceCase(check.title)}</p>
            <p className="soft">{check.lookFor}</p>
            <ul>
              {check.listenFor.map((spec) => (
                <SpecHeard
                  key={JSON.stringify(spec)}
                  spec={spec}
                  heard={heard}
                  evidence={evidence}
                  onPassage={onPassage}
                />
              ))}
            </ul>
          </li>
        ))}
      </ul>
      <p className="faint">{say.checksHelp}</p>
    </section>
  );
}

interface SpecHeardProps extends Omit<CheckListProps, 'checks'> {
  readonly spec: CheckSpec;
}

function SpecHeard({ spec, heard, evidence, onPassage }: SpecHeardProps) {
  const locale = useLocale();
  const describe = useDescribeCheck();
  const answer = judgeCheck(spec, evidence, heard.notes);
  return (
    <li className="take-check-spec">
      <span className={`take-check-answer is-${answer.answer.replaceAll(' ', '-')}`}>
        {say.answers[answer.answer]}
      </span>
      <div>
        <p>
          {sentenceCase(describe(spec))}
          {answer.answer !== 'could not hear' && (
            <span className="soft">
              {' · '}
              {(answer.figure.unit === 'count' ? say.found : say.measured)(
                formatFigure(answer.figure, locale),
              )}
            </span>
          )}
        </p>
        {answer.answer === 'could not hear' ? (
          <p className="soft">{answer.reason}</p>
        ) : (
          <PassageList passages={answer.passages} onPassage={onPassage} />
        )}
      </div>
    </li>
  );
}
