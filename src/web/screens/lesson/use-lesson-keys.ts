import { useEffect, useRef } from 'react';
import { keyPlace, type LessonAction, lessonAction } from './lesson-keys.ts';

/** Hears the keys of teaching mode; an open dialog or menu has them for itself. */
export function useLessonKeys(single: boolean, act: (action: LessonAction) => void): void {
  const actNow = useRef(act);
  actNow.current = act;
  useEffect(() => {
    const hear = (event: KeyboardEvent) => {
      if (event.defaultPrevented || document.querySelector('[role=dialog], [role=menu]')) return;
      const target = event.target instanceof HTMLElement ? event.target : null;
      const action = lessonAction(event, keyPlace(target, event.key), single);
      if (!action) return;
      event.preventDefault();
      actNow.current(action);
    };
    window.addEventListener('keydown', hear);
    return () => window.removeEventListener('keydown', hear);
  }, [single]);
}
