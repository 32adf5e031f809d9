// Keys of the player: the space bar, and what a page-turner pedal sends.

import { type RefObject, useEffect, useRef } from 'react';

const keys = new Set([' ', 'PageDown', 'PageUp']);
const own = 'input, textarea, select, [contenteditable=true]';
const pressed = 'button, a, summary, [role=slider]';

/** `onPage` listens everywhere on the page; else only inside `place`. Fields and buttons keep their keys. */
export function usePlayerKeys(
  toggle: () => void,
  onPage: boolean,
  place: RefObject<HTMLElement | null>,
): void {
  const newest = useRef(toggle);
  newest.current = toggle;
  useEffect(() => {
    const target = onPage ? window : place.current;
    const hear = (event: Event) => {
      if (!(event instanceof KeyboardEvent) || !keys.has(event.key) || event.repeat) return;
      if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey || event.defaultPrevented) return;
      const element = event.target instanceof Element ? event.target : null;
      if (element?.closest(own)) return;
      if (event.key === ' ' && element?.closest(pressed)) return;
      event.preventDefault();
      newest.current();
    };
    target?.addEventListener('keydown', hear);
    return () => target?.removeEventListener('keydown', hear);
  }, [onPage, place]);
}
