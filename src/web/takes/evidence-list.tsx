// What a take shows, row by row: figures with their doubt, the passages that show them, and what could not be heard.

import type { TakeView } from '#contract';
import { type EvidenceName, evidenceNames, figuresOf, type Passage } from '#listening';
import { useLocale } from '../hooks/use-format.ts';
import { words } from '../words/index.ts';
import { formatFigure } from './format-figure.ts';
import { PassageList } from './passage-list.tsx';
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
          <PassageList passages={row.passages} onPassage={onPassage} />
        </dd>
      ) : (
        <dd className="soft">
          <em>{say.couldNotHear}</em> {row.reason}
        </dd>
      )}
    </div>
  );
}
