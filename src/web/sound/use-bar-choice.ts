// The buttons of bars, on a chart or over a sheet: one stop for the tab key, arrows from bar to bar, with shift a stretch.

import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import { type BarRange, barAfterKey, pressBar, rangeOf } from './choose-bars.ts';

export interface BarChoice {
  /** For the frame of the buttons. */
  readonly frame: {
    readonly onKeyDown: (event: KeyboardEvent<HTMLElement>) => void;
    readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void;
  };
  /** For the button of a bar; bars count from 1 without a hole. */
  readonly button: (bar: number) => {
    readonly 'data-choose': number;
    readonly tabIndex: number;
    readonly 'aria-pressed': boolean;
    readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void;
    readonly onClick: () => void;
  };
}

const barOf = (element: Element | null): number | null => {
  const bar = Number(element?.closest('[data-choose]')?.getAttribute('data-choose') ?? Number.NaN);
  return Number.isNaN(bar) ? null : bar;
};

export function useBarChoice(
  range: BarRange | null,
  onRange: (range: BarRange | null) => void,
  count: number,
): BarChoice {
  const [drag, setDrag] = useState<BarRange | null>(null);
  const from = useRef<number | null>(null);
  const anchor = useRef<number | null>(null);
  const dragged = useRef<BarRange | null>(null);
  const [tab, setTab] = useState(1);
  const newest = useRef(onRange);
  newest.current = onRange;
  // A finger is lifted wherever it is.
  useEffect(() => {
    const end = (isDone: boolean) => {
      const chosen = dragged.current;
      from.current = null;
      dragged.current = null;
      setDrag(null);
      if (isDone && chosen !== null && chosen.first !== chosen.last) newest.current(chosen);
    };
    const up = () => end(true);
    const cancel = () => end(false);
    addEventListener('pointerup', up);
    addEventListener('pointercancel', cancel);
    return () => {
      removeEventListener('pointerup', up);
      removeEventListener('pointercancel', cancel);
    };
  }, []);
  const shown = drag ?? range;
  return {
    frame: {
      onKeyDown(event) {
        const target = event.target instanceof Element ? event.target : null;
        const bar = barOf(target);
        // Arrows after a press of the finger stay the page's: a pedal sends them.
        if (bar === null || !target?.matches(':focus-visible')) return;
        if (event.key === 'Escape' && range !== null) {
          event.stopPropagation();
          onRange(null);
          return;
        }
        const next = barAfterKey(event.key, bar, count, columnsAround(event.currentTarget, bar));
        if (next === null || event.ctrlKey || event.altKey || event.metaKey) return;
        event.preventDefault();
        event.stopPropagation();
        setTab(next);
        event.currentTarget.querySelector<HTMLElement>(`[data-choose="${next}"]`)?.focus();
        if (!event.shiftKey) anchor.current = null;
        else {
          anchor.current ??= bar;
          onRange(rangeOf(anchor.current, next));
        }
      },
      onPointerMove(event) {
        if (from.current === null) return;
        const bar = barOf(document.elementFromPoint(event.clientX, event.clientY));
        if (bar === null) return;
        const next = rangeOf(from.current, bar);
        if (next.first === dragged.current?.first && next.last === dragged.current.last) return;
        dragged.current = next;
        setDrag(next);
      },
    },
    button: (bar) => ({
      'data-choose': bar,
      tabIndex: bar === Math.min(tab, count) ? 0 : -1,
      'aria-pressed': shown !== null && bar >= shown.first && bar <= shown.last,
      onPointerDown(event) {
        if (event.button !== 0) return;
        if (event.currentTarget.hasPointerCapture(event.pointerId))
          event.currentTarget.releasePointerCapture(event.pointerId); // else the lifted finger would press this bar
        from.current = bar;
        setTab(bar);
      },
      onClick: () => onRange(pressBar(range, bar)),
    }),
  };
}

/** How many bars stand in the line of a bar, by where their buttons are. */
function columnsAround(frame: HTMLElement, bar: number): number {
  const top = (element: Element) => Math.round(element.getBoundingClientRect().top);
  const buttons = [...frame.querySelectorAll('[data-choose]')];
  const own = buttons.find((one) => barOf(one) === bar);
  return own === undefined ? 1 : buttons.filter((one) => Math.abs(top(one) - top(own)) < 4).length;
}
