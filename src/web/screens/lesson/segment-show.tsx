// One segment large: what it is, how to teach it, what to have ready, and why it stands here.

import type { LessonSegmentView, LessonView, MaterialView } from '#contract';
import { parseBackingMaterial } from '#music';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { MarkdownText } from '../../components/markdown.tsx';
import { seedOf } from '../../components/material-seed.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { materialAddress } from '../materials/material-address.ts';
import { howToFor } from './how-to-for.ts';
import { LastTime } from './last-time.tsx';
import { SegmentBands } from './segment-bands.tsx';
import { inkIndexOf } from './segment-strip.tsx';

export type Unfolded = 'why' | 'lastTime' | 'toKnow';

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
          {/* Folded up by itself: whoever learns sees the screen too. */}
          {lesson.toKnow.length > 0 && (
            <Unfold what="toKnow" name={words.lesson.toKnow} now={unfolded} onUnfold={onUnfold} />
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
      {unfolded === 'toKnow' && (
        <div className="show-unfolded last-time" id="unfolded-toKnow">
          {lesson.toKnow.map(({ student, name, note }) => (
            <div key={student}>
              {lesson.learner.group !== null && <p className="lesson-label">{name}</p>}
              <p className="last-time-note">{note}</p>
            </div>
          ))}
        </div>
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
              <dd>
                {segment.materials.map((material, at) => (
                  <span key={material.key}>
                    {at > 0 && ' · '}
                    <SegmentMaterial lesson={lesson} segment={segment} material={material} />
                  </span>
                ))}
              </dd>
            </div>
          )}
        </dl>
      )}
      <SegmentBands lesson={lesson} segment={segment} />
      <div className="show-how">
        {segment.howTo.trim() === '' ? (
          <p className="soft">{words.lesson.noHowTo[segment.kind]}</p>
        ) : (
          <MarkdownText text={howToFor(segment.howTo, lesson.learner.instrument)} />
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

interface SegmentMaterialProps {
  readonly lesson: LessonView;
  readonly segment: LessonSegmentView;
  readonly material: MaterialView;
}

/** A sheet opens in a window of its own: the lesson and its clock stay where they are. */
function SegmentMaterial({ lesson, segment, material }: SegmentMaterialProps) {
  if (material.spec === null || parseBackingMaterial(material.spec).ok) return material.title;
  const { instrument, stage, age } = lesson.learner;
  const seed = seedOf(lesson, segment, material);
  return (
    <a
      className="show-material"
      href={materialAddress(material.spec, { instrument, stage, age, seed })}
      target="_blank"
      rel="noreferrer"
    >
      {material.title}
    </a>
  );
}
