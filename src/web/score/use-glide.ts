// When the plan changes, blocks glide from where they stood to where they stand now, so that the eye can follow.

import { type RefObject, useLayoutEffect, useRef } from 'react';

const duration = 380;

/**
 * Animates the elements marked `data-glide="key"` inside `ref` whenever `revision` changes: those whose key was there before
 * glide, new ones fade in. A change of width or zoom alone moves nothing.
 */
export function useGlide(ref: RefObject<HTMLElement | null>, revision: number, layout: unknown): void {
  const before = useRef<{ revision: number; places: Map<string, DOMRect>; origin: DOMRect } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new layout is what is waited for, though it is not read
  useLayoutEffect(() => {
    const container = ref.current;
    if (!container) return;
    const origin = container.getBoundingClientRect();
    const places = new Map<string, DOMRect>();
    const elements = [...container.querySelectorAll<SVGElement>('[data-glide]')];
    for (const element of elements) {
      const beam = element.querySelector('.beam') ?? element;
      places.set(element.getAttribute('data-glide') ?? '', beam.getBoundingClientRect());
    }
    const last = before.current;
    before.current = { revision, places, origin };
    if (!last || last.revision === revision) return;
    if (window.matchMedia('(prefers-reduced-motion: reduce)').matches) return;
    for (const element of elements) {
      const key = element.getAttribute('data-glide') ?? '';
      const from = last.places.get(key);
      const to = places.get(key);
      if (!to) continue;
      if (!from) {
        element.animate([{ opacity: 0 }, { opacity: 1 }], { duration, easing: 'ease-out' });
        continue;
      }
      const dx = from.left - last.origin.left - (to.left - origin.left);
      const dy = from.top - last.origin.top - (to.top - origin.top);
      if (Math.abs(dx) + Math.abs(dy) < 1) continue;
      element.animate([{ transform: `translate(${dx}px, ${dy}px)` }, { transform: 'none' }], {
        duration,
        easing: 'cubic-bezier(0.3, 0.7, 0.2, 1)',
      });
    }
  }, [ref, revision, layout]);
}
