// Passages of a take that show something: each marked in the picture, and heard where the sound is kept.

import type { Passage } from '#listening';
import { Button } from '../components/button.tsx';
import { words } from '../words/index.ts';
import { formatLength } from './format-figure.ts';

const say = words.takes.result;

export interface PassageListProps {
  readonly passages: readonly Passage[];
  readonly onPassage: (passage: Passage) => void;
}

export function PassageList({ passages, onPassage }: PassageListProps) {
  if (passages.length === 0) return null;
  return (
    <details className="evidence-passages">
      <summary>{say.passages(passages.length)}</summary>
      <ul>
        {passages.map((passage) => (
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
  );
}

const place = (passage: Passage) => say.at(passage.bar, formatLength(passage.from));
