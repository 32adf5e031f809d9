// One segment large: what it is, how to teach it, what to have ready, and why it stands here.

import type { LessonSegmentView, LessonView } from '#contract';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { MarkdownText } from '../../components/markdown.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { LastTime } from './last-time.tsx';
import { inkIndexOf } from './segment-strip.tsx';

export type Unfolded = 'why' | 'lastTime';

export interface SegmentShowProps {
  readonly lesson: LessonView;
  readonly segment: LessonSegmentView;
  /** What is unfolded under the title. */
  readonly unfolded: Unfolded | null;
  readonly onUnfold: (what: Unfolded | null) => void;
}

export function SegmentShow({ lesson, segment, unfolded, onUnfold }: SegmentShowProps) {
  const format = useFormat();
  const ink = inkIndexOf(lesson, segment);
  const strand = lesson.strands.find((s) => s.id === segment.strand);
  const kind = words.lesson.kind[segment.kind];
  const about = [
    strand?.name ?? null,
    segment.unitTitle === segment.title ? null : segment.unitTitle,
    segment.kind === 'work' || kind === segment.title.toLowerCase() ? null : kind,
    format.minutes(segment.minutes),
    segment.kind === 'work' ? (segment.completes ? words.lesson.completes : words.lesson.goesOn) : null,
    segment.pinned ? words.lesson.pinned : null,
  ].filter(Boolean);
  return (
    <>
      <div className="show-line">
        <p className="show-about" style={ink === null ? undefined : { color: `var(--strand-${ink})` }}>
          {about.join(' · ')}
        </p>
        <div className="show-unfold">
          {segment.reasons.length > 0 && (
            <Unfold what="why" name={words.lesson.whyNow} now={unfolded} onUnfold={onUnfold} />
          )}
          <Unfold what="lastTime" name={words.lesson.lastTime} now={unfolded} onUnfold={onUnfold} />
        </div>
      </div>
      <h2 className="show-title">{sentenceCase(segment.title)}</h2>
      {unfolded === 'why' && (
        <ul className="show-unfolded" id="unfolded-why">
          {segment.reasons.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      )}
      {unfolded === 'lastTime' && (
        <div className="show-unfolded" id="unfolded-lastTime">
          <LastTime lesson={lesson} />
        </div>
      )}
      {(segment.bring.length > 0 || segment.materials.length > 0) && (
        <dl className="show-ready">
          {segment.bring.length > 0 && (
            <div>
              <dt>{words.lesson.bring}</dt>
              <dd>{segment.bring.map(sentenceCase).join(' · ')}</dd>
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
    </>
  );
}

interface UnfoldProps {
  readonly what: Unfolded;
  readonly name: string;
  readonly now: Unfolded | null;
  readonly onUnfold: (what: Unfolded | null) => void;
}

function Unfold({ what, name, now, onUnfold }: UnfoldProps) {
  const open = now === what;
  return (
    <Button
      kind="plain"
      className="show-unfold-button"
      aria-expanded={open}
      {...(open ? { 'aria-controls': `unfolded-${what}` } : {})}
      onPress={() => onUnfold(open ? null : what)}
    >
      {name}
    </Button>
  );
}
