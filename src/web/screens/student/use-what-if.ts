// Asks the server what commands would do to a course, with nothing saved.

import { useCallback, useState } from 'react';
import type { CourseView, Step, WhatIfView } from '#contract';
import { postJson } from '../../app/api.ts';
import { showFault } from '../../app/send.ts';

export interface Imagined {
  readonly view: WhatIfView;
  readonly commands: readonly Step[];
  /** The revision it was imagined from: another one on screen makes it stale. */
  readonly from: number;
}

/** The newest answer, and what asks for one. */
export function useWhatIf(course: CourseView) {
  const [imagined, setImagined] = useState<Imagined | null>(null);
  const [asking, setAsking] = useState(false);
  const ask = useCallback(
    async (commands: readonly Step[]) => {
      setAsking(true);
      const reply = await postJson<WhatIfView>(`/api/courses/${encodeURIComponent(course.id)}/what-if`, {
        commands,
      });
      setAsking(false);
      if (reply.ok) setImagined({ view: reply.value, commands, from: course.revision });
      else showFault(reply.error);
    },
    [course.id, course.revision],
  );
  const forget = useCallback(() => setImagined(null), []);
  return { imagined: imagined?.from === course.revision ? imagined : null, asking, ask, forget };
}
