// A take recorded in a lesson, for the activity in hand; in a group, of one of its members.

import type { LessonSegmentView, LessonView } from '#contract';
import { RecordTake } from './record-take.tsx';
import { takeForSegment } from './take-for-lesson.ts';
import { WhoseTake } from './whose-take.tsx';

export interface LessonTakeProps {
  readonly lesson: LessonView;
  readonly segment: LessonSegmentView;
  readonly onClose: () => void;
}

export function LessonTake({ lesson, segment, onClose }: LessonTakeProps) {
  return (
    <WhoseTake learner={lesson.learner} onClose={onClose}>
      {(who) => <RecordTake of={takeForSegment(lesson, segment, who)} onClose={onClose} />}
    </WhoseTake>
  );
}
