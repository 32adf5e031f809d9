// A take of one task of the week's practice, recorded from the practice page: on screen only, never on paper.

import { lazy, Suspense, useState } from 'react';
import type { LessonView } from '#contract';
import { Button } from '../components/button.tsx';
import { words } from '../words/index.ts';
import { takeForTask } from './take-for-task.ts';
import { WhoseTake } from './whose-take.tsx';

// Loaded when a take is wanted: the sheet comes without it.
const RecordTake = lazy(async () => ({ default: (await import('./record-take.tsx')).RecordTake }));
const say = words.takes.practice;

export interface PracticeTakeProps {
  readonly lesson: LessonView;
  /** The line of practice that is played. */
  readonly task: string;
}

export function PracticeTake({ lesson, task }: PracticeTakeProps) {
  const [isOpen, setOpen] = useState(false);
  const close = () => setOpen(false);
  return (
    <span className="no-print">
      <Button kind="plain" aria-label={say.recordOf(task)} onPress={() => setOpen(true)}>
        {say.record}
      </Button>
      {isOpen && (
        <WhoseTake learner={lesson.learner} onClose={close}>
          {(who) => (
            <Suspense fallback={null}>
              <RecordTake of={takeForTask(lesson, task, who)} onClose={close} />
            </Suspense>
          )}
        </WhoseTake>
      )}
    </span>
  );
}
