// One segment large: what it is, how to teach it, what to have ready, and why it stands here.

import type { LessonSegmentView, LessonView } from '#contract';
import { MarkdownText } from '../../components/markdown.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { isLearning } from './close-proposals.ts';
import { inkIndexOf } from './segment-strip.tsx';

export interface SegmentShowProps {
  readonly lesson: LessonView;
  readonly segment: LessonSegmentView;
  readonly why: boolean;
  readonly onWhy: (open: boolean) => void;
}

export function SegmentShow({ lesson, segment, why, onWhy }: SegmentShowProps) {
  const format = useFormat();
  const ink = inkIndexOf(lesson, segment);
  const strand = lesson.strands.find((s) => s.id === segment.strand);
  const kind = words.lesson.kind[segment.kind];
  const about = [
    strand?.name ?? null,
    segment.unitTitle === segment.title ? null : segment.unitTitle,
    segment.kind === 'work' || kind === segment.title.toLowerCase() ? null : kind,
    format.minutes(segment.minutes),
    isLearning(segment) ? (segment.completes ? words.lesson.completes : words.lesson.goesOn) : null,
    segment.pinned ? words.lesson.pinned : null,
  ].filter(Boolean);
  return (
    <>
      <p className="show-about" style={ink === null ? undefined : { color: `var(--strand-${ink})` }}>
        {about.join(' · ')}
      </p>
      <h2 className="show-title">{segment.title}</h2>
      {(segment.bring.length > 0 || segment.materials.length > 0) && (
        <dl className="show-ready">
          {segment.bring.length > 0 && (
            <div>
              <dt>{words.lesson.bring}</dt>
              <dd>{segment.bring.join(' · ')}</dd>
            </div>
          )}
          {segment.materials.length > 0 && (
            <div>
              <dt>{words.lesson.materials}</dt>
              <dd>{segment.materials.map((m) => m.title).join(' · ')}</dd>
            </div>
          )}
        </dl>
      )}
      <div className="show-how">
        {segment.howTo.trim() === '' ? (
          <p className="soft">{words.lesson.noHowTo[segment.kind]}</p>
        ) : (
          <MarkdownText text={segment.howTo} />
        )}
      </div>
      {segment.reasons.length > 0 && (
        <details className="fold" open={why} onToggle={(event) => onWhy(event.currentTarget.open)}>
          <summary>{words.lesson.whyNow}</summary>
          <ul className="show-reasons">
            {segment.reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
