import { useCallback, useEffect, useMemo, useState } from 'react';
import type { LessonView } from '#contract';
import type { OutboxCommand } from '../../app/outbox-queue.ts';
import { useOutbox } from '../../hooks/use-outbox.ts';
import { useLesson } from '../../hooks/use-view.ts';
import { addOnItsWay, dropTold, markArrived, type OnItsWay, overlayLesson } from './lesson-overlay.ts';

export interface LessonDesk {
  /** The lesson with everything done here already in it; undefined until it is known. */
  readonly lesson: LessonView | undefined;
  /** The lesson as the studio last told it: what text fields merge with. */
  readonly told: LessonView | undefined;
  readonly view: ReturnType<typeof useLesson>;
  readonly post: (command: OutboxCommand) => void;
}

/** One lesson under the hands: what is posted shows at once and is sent through the outbox. */
export function useLessonDesk(id: string): LessonDesk {
  const view = useLesson(id);
  const { data, dataUpdatedAt } = view;
  const { post, pending } = useOutbox();
  const [onItsWay, setOnItsWay] = useState<readonly OnItsWay[]>([]);

  useEffect(() => {
    if (pending === 0) setOnItsWay((list) => markArrived(list, Date.now()));
  }, [pending]);
  useEffect(() => setOnItsWay((list) => dropTold(list, dataUpdatedAt)), [dataUpdatedAt]);

  const postAndShow = useCallback(
    (command: OutboxCommand) => {
      setOnItsWay((list) => addOnItsWay(list, command));
      post(command);
    },
    [post],
  );
  const lesson = useMemo(() => (data ? overlayLesson(data, onItsWay) : undefined), [data, onItsWay]);
  return { lesson, told: data, view, post: postAndShow };
}
