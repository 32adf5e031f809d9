// What the browser knows of the page: the width of the score's place, how wide its type runs, and whether it prints.

import { type RefObject, useEffect, useLayoutEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { Measure } from './fit-title.ts';

/** The width of an element in whole pixels, as it changes; 0 before it is there. */
export function useWidth(ref: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measureIt = () => setWidth(Math.floor(element.clientWidth));
    measureIt();
    const observer = new ResizeObserver(measureIt);
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return width;
}

/** Measures text as it will be set; a new function once the fonts have come. */
export function useMeasure(): Measure {
  const [fontsReady, setFontsReady] = useState(document.fonts.status === 'loaded');
  useEffect(() => {
    let gone = false;
    void document.fonts.ready.then(() => {
      if (!gone) setFontsReady(true);
    });
    return () => {
      gone = true;
    };
  }, []);
  return useMemo(() => {
    const context = document.createElement('canvas').getContext('2d');
    const family = getComputedStyle(document.documentElement).getPropertyValue('--sans') || 'sans-serif';
    // Without a canvas, or before the fonts, a cautious half em a letter keeps titles apart.
    if (!context || !fontsReady) return (text, size) => text.length * size * 0.56;
    const widths = new Map<string, number>();
    return (text, size) => {
      const known = widths.get(text);
      if (known !== undefined) return known * size;
      context.font = `100px ${family}`;
      const em = context.measureText(text).width / 100;
      widths.set(text, em);
      return em * size;
    };
  }, [fontsReady]);
}

/** Whether the page is being printed: true from `beforeprint`, so that the score is laid out for paper. */
export function usePrinting(): boolean {
  return useSyncExternalStore(watchPrinting, readPrinting);
}

let printing = false;
const readPrinting = () => printing;
function watchPrinting(tell: () => void): () => void {
  const media = window.matchMedia('print');
  const set = (now: boolean) => {
    printing = now;
    tell();
  };
  const before = () => set(true);
  const after = () => set(false);
  const change = () => set(media.matches);
  window.addEventListener('beforeprint', before);
  window.addEventListener('afterprint', after);
  media.addEventListener('change', change);
  return () => {
    window.removeEventListener('beforeprint', before);
    window.removeEventListener('afterprint', after);
    media.removeEventListener('change', change);
  };
}

const zoomKey = 'levare.score.bars';

/** How many bars this teacher wants on a line, remembered on this machine; null until chosen. */
export function readChosenBars(): number | null {
  try {
    const held = Number(window.localStorage.getItem(zoomKey));
    return Number.isInteger(held) && held >= 1 && held <= 12 ? held : null;
  } catch {
    return null; // storage may be switched off; the suggestion serves
  }
}

/** Remembers it; without storage it holds for this visit. */
export function keepChosenBars(bars: number): void {
  try {
    window.localStorage.setItem(zoomKey, String(bars));
  } catch {
    // see above
  }
}
