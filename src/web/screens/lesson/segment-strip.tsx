// The lesson's segments in time order: where one is, how far each has come, and a way to look at any of them.

import type { InkIndex, LessonSegmentView, LessonView } from '#contract';
import { sentenceCase } from '../../app/sentence-case.ts';
import { Button } from '../../components/button.tsx';
import { words } from '../../words/index.ts';
import { SegmentMark } from '../day/segment-line.tsx';
import './segment-strip.css';

export interface SegmentStripProps {
  readonly lesson: LessonView;
  readonly shown: string;
  readonly running: string | null;
  readonly seconds: (segment: LessonSegmentView['id']) => number;
  readonly onShow: (segment: LessonSegmentView['id']) => void;
}

/** The ink of a segment's strand, or null where it has none. */
export function inkIndexOf(lesson: Pick<LessonView, 'strands'>, segment: LessonSegmentView): InkIndex | null {
  return lesson.strands.find((s) => s.id === segment.strand)?.ink ?? null;
}

export function SegmentStrip({ lesson, shown, running, seconds, onShow }: SegmentStripProps) {
  return (
    <nav aria-label={words.lesson.segments} className="strip">
      <ol className="strip-line">
        {lesson.segments.map((segment) => {
          const share = Math.min(1, seconds(segment.id) / (segment.minutes * 60));
          const outcome = segment.outcome === null ? null : words.lesson.outcome[segment.outcome];
          return (
            <li key={segment.id} className="strip-item" style={{ flexGrow: segment.minutes }}>
              <Button
                kind="plain"
                className="strip-button"
                aria-current={segment.id === shown ? 'step' : false}
                onPress={() => onShow(segment.id)}
              >
                <span className="strip-mark" data-outcome={segment.outcome ?? 'none'}>
                  <SegmentMark segment={{ kind: segment.kind, ink: inkIndexOf(lesson, segment) }} />
                  <span
                    className="strip-done"
                    data-running={segment.id === running}
                    style={{ width: `${100 * share}%` }}
                  />
                </span>
                <span className="strip-words">
                  <span className="strip-minutes">
                    {segment.minutes}
                    <span className="only-heard"> {words.lesson.minutes}, </span>
                  </span>
                  <span className="strip-title">{sentenceCase(segment.title)}</span>
                  {segment.outcome && (
                    <span className="strip-outcome" data-outcome={segment.outcome} aria-hidden="true" />
                  )}
                  {outcome && <span className="only-heard">, {outcome}</span>}
                </span>
              </Button>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
