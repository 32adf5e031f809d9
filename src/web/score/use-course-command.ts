// Changes to one course, one after another: the second of two quick ones has seen what the first did, so that nobody is
// told that the course was changed elsewhere by their own hand.

import { useCallback, useRef } from 'react';
import type { Command, CommandReply, CourseView } from '#contract';
import { useCommand } from '../hooks/use-command.ts';

export function useCourseCommand(course: Pick<CourseView, 'id' | 'revision'>) {
  const send = useCommand();
  const seen = useRef(course.revision);
  seen.current = Math.max(seen.current, course.revision);
  const last = useRef<Promise<unknown>>(Promise.resolve());
  return useCallback(
    (command: Command): Promise<CommandReply | null> => {
      const next = last.current.then(async () => {
        const reply = await send('seen' in command ? { ...command, seen: seen.current } : command);
        for (const { course: id, revision } of reply?.courses ?? [])
          if (id === course.id) seen.current = Math.max(seen.current, revision);
        return reply;
      });
      last.current = next;
      return next;
    },
    [send, course.id],
  );
}
