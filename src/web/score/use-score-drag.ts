// Moving a segment to another lesson by pointer: a mouse or pen drags at once; on touch a long press opens the menu, which
// has the same move, so that a finger can always scroll the page.

import { type PointerEvent as ReactPointerEvent, useEffect, useRef, useState } from 'react';
import type { ScoreItem } from './score-items.ts';

export interface Drag {
  readonly item: ScoreItem & { readonly kind: 'segment' };
  readonly x: number;
  readonly y: number;
  /** Id of the bar under the pointer, when it can take the segment. */
  readonly over: string | null;
}

const slack = 6;
const longPress = 450;

interface Given {
  readonly itemOf: (element: Element) => ScoreItem | null;
  readonly canLift: (item: ScoreItem) => boolean;
  readonly canLand: (bar: string) => boolean;
  readonly onDrop: (item: ScoreItem, bar: string) => void;
  readonly onLongPress: (item: ScoreItem, element: Element) => void;
}

/** The drag under way, and what starts one. A click that ended a drag is swallowed. */
export function useScoreDrag(given: Given) {
  const [drag, setDrag] = useState<Drag | null>(null);
  const latest = useRef(given);
  latest.current = given;
  const stop = useRef<(() => void) | null>(null);
  const swallow = useRef(false);
  useEffect(() => () => stop.current?.(), []);

  const onPointerDown = (event: ReactPointerEvent<Element>) => {
    swallow.current = false;
    const element = event.target instanceof Element ? event.target.closest('[data-id]') : null;
    const item = element && latest.current.itemOf(element);
    if (!element || !item || event.button !== 0) return;
    if (event.pointerType === 'touch') return watchLongPress(event, item, element);
    if (item.kind !== 'segment' || !latest.current.canLift(item)) return;
    const start = { x: event.clientX, y: event.clientY };
    let now: Drag | null = null;
    const move = (e: PointerEvent) => {
      if (!now && Math.hypot(e.clientX - start.x, e.clientY - start.y) < slack) return;
      e.preventDefault();
      scrollNearEdge(e.clientY);
      now = { item, x: e.clientX, y: e.clientY, over: barUnder(e, latest.current.canLand) };
      setDrag(now);
    };
    const end = (dropped: boolean) => {
      stop.current?.();
      if (now) {
        swallow.current = true;
        if (dropped && now.over) latest.current.onDrop(item, now.over);
      }
      setDrag(null);
    };
    const up = () => end(true);
    const cancel = () => end(false);
    const key = (e: KeyboardEvent) => {
      if (e.key === 'Escape' && now) {
        e.preventDefault();
        end(false);
      }
    };
    window.addEventListener('pointermove', move);
    window.addEventListener('pointerup', up);
    window.addEventListener('pointercancel', cancel);
    window.addEventListener('keydown', key, true);
    stop.current = () => {
      window.removeEventListener('pointermove', move);
      window.removeEventListener('pointerup', up);
      window.removeEventListener('pointercancel', cancel);
      window.removeEventListener('keydown', key, true);
      stop.current = null;
    };
  };

  const watchLongPress = (event: ReactPointerEvent<Element>, item: ScoreItem, element: Element) => {
    const start = { x: event.clientX, y: event.clientY };
    const timer = window.setTimeout(() => {
      stop.current?.();
      swallow.current = true;
      latest.current.onLongPress(item, element);
    }, longPress);
    const move = (e: PointerEvent) => {
      if (Math.hypot(e.clientX - start.x, e.clientY - start.y) > slack * 2) stop.current?.();
    };
    const end = () => stop.current?.();
    window.addEventListener('pointermove', move);
    window.addEventListener('pointerup', end);
    window.addEventListener('pointercancel', end);
    stop.current = () => {
      window.clearTimeout(timer);
      window.removeEventListener('pointermove', move);
      window.removeEventListener('pointerup', end);
      window.removeEventListener('pointercancel', end);
      stop.current = null;
    };
  };

  /** Whether the click that just came belongs to a drag or a long press. */
  const tookClick = () => {
    const taken = swallow.current;
    swallow.current = false;
    return taken;
  };
  return { drag, onPointerDown, tookClick };
}

/** A score is longer than the window: near its edge the page follows the pointer. */
function scrollNearEdge(y: number): void {
  const edge = 64;
  if (y < edge) window.scrollBy(0, (y - edge) / 3);
  else if (y > window.innerHeight - edge) window.scrollBy(0, (y - window.innerHeight + edge) / 3);
}

function barUnder(event: PointerEvent, canLand: (bar: string) => boolean): string | null {
  for (const element of document.elementsFromPoint(event.clientX, event.clientY)) {
    const bar = element.closest('[data-bar]');
    const id = bar?.getAttribute('data-bar');
    if (id) return canLand(id) ? id : null;
  }
  return null;
}
