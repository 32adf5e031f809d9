import { words } from '../words/index.ts';
import type { ScoreItem } from './score-items.ts';

const say = words.score;

/** The line beneath the score: all of what is pointed at or focused, and why it stands there. */
export function ScoreCaption({ item, told }: { readonly item: ScoreItem | null; readonly told: string }) {
  return (
    <p className="score-caption no-print" aria-hidden="true">
      {told ? (
        <span className="score-caption-told">{told}</span>
      ) : item ? (
        <>
          <span className="score-caption-title">{item.description.title}</span>
          <span>{item.description.facts.join(' · ')}</span>
          {item.description.reasons.length > 0 && (
            <span className="score-caption-why">{say.why(item.description.reasons)}</span>
          )}
        </>
      ) : (
        <>
          <span className="faint score-caption-keys">{say.captionEmpty}</span>
          <span className="faint score-caption-touch">{say.captionTouch}</span>
        </>
      )}
    </p>
  );
}
