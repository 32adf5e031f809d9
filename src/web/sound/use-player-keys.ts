// Keys of the player: the space bar, and what a page-turner pedal sends.

import { type RefObject, useEffect, useRef } from 'react';

const keys = new Set([' ', 'PageDown', 'PageUp']);
/** Some pedals send arrows; they are heard where the page is for playing. */
const arrows = new Set(['ArrowLeft', 'ArrowRight']);
const own = 'input, textarea, select, [contenteditable=true]';
const pressed = 'button, a, summary, [role=slider]';
const moved = 'input, [role=slider], [role=radiogroup], [role=menu]';

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
      if (!(event instanceof KeyboardEvent) || event.repeat) return;
      if (!keys.has(event.key) && !(onPage && arrows.has(event.key))) return;
      if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey || event.defaultPrevented) return;
      const element = event.target instanceof Element ? event.target : null;
      if (element?.closest(own)) return;
      if (event.key === ' ' && element?.closest(pressed)) return;
      if (arrows.has(event.key) && element?.closest(moved)) return;
      event.preventDefault();
      newest.current();
    };
    target?.addEventListener('keydown', hear);
    return () => target?.removeEventListener('keydown', hear);
  }, [onPage, place]);
}
