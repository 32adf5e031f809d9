// What a take shows, row by row: figures with their doubt, the passages that show them, and what could not be heard.

import type { TakeView } from '#contract';
import { describeProblem, type EvidenceName, evidenceNames, figuresOf, type Passage } from '#listening';
import { Button } from '../components/button.tsx';
import { useLocale } from '../hooks/use-format.ts';
import { words } from '../words/index.ts';
import { formatFigure, formatLength } from './format-figure.ts';
import './evidence-list.css';

const say = words.takes.result;

export interface EvidenceListProps {
  readonly take: Pick<TakeView, 'heard' | 'evidence'>;
  /** Shows a passage, and hears it where the sound is kept. */
  readonly onPassage: (passage: Passage) => void;
}

export function EvidenceList({ take, onPassage }: EvidenceListProps) {
  return (
    <div className="evidence">
      {take.heard.problems.map((problem) => (
        <p key={problem.kind} className="evidence-problem">
          {describeProblem(problem)}
        </p>
      ))}
      <dl>
        {evidenceNames.map((name) => (
          <EvidenceRow key={name} name={name} take={take} onPassage={onPassage} />
        ))}
      </dl>
      <p className="faint">{say.uncertainty}</p>
    </div>
  );
}

function EvidenceRow({ name, take, onPassage }: EvidenceListProps & { readonly name: EvidenceName }) {
  const locale = useLocale();
  const row = take.evidence[name];
  const figures = Object.entries(figuresOf(take.evidence, name));
  return (
    <div className="evidence-row">
      <dt>{words.takes.rows[name]}</dt>
      {row.heard ? (
        <dd>
          <ul className="evidence-figures">
            {figures.map(([figure, value]) =>
              value === undefined ? null : (
                <li key={figure}>
                  <span className="soft">{words.takes.figure(name, figure)}</span>{' '}
                  <span className="evidence-value">{formatFigure(value, locale)}</span>
                </li>
              ),
            )}
          </ul>
          {row.passages.length > 0 && (
            <details className="evidence-passages">
              <summary>{say.passages(row.passages.length)}</summary>
              <ul>
                {row.passages.map((passage) => (
                  <li key={`${passage.from} ${passage.shows}`}>
                    <Button
                      kind="plain"
                      aria-label={say.hearPassage(`${passage.shows}, ${place(passage)}`)}
                      onPress={() => onPassage(passage)}
                    >
                      {place(passage)}
                    </Button>
                    <span>{passage.shows}</span>
                  </li>
                ))}
              </ul>
            </details>
          )}
        </dd>
      ) : (
        <dd className="soft">
          <em>{say.couldNotHear}</em> {row.reason}
        </dd>
      )}
    </div>
  );
}

const place = (passage: Passage) => say.at(passage.bar, formatLength(passage.from));
