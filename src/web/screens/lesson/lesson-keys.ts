// Keys of teaching mode: arrows and page keys (a page-turner pedal sends these), the space bar for the clock, and
// single letters and digits that can be turned off (WCAG 2.2, success criterion 2.1.4).

import type { Level } from '#planning';

export type LessonAction =
  | { readonly kind: 'next' | 'previous' | 'clock' | 'moveOn' | 'carryOn' | 'setAside' | 'notReached' }
  | { readonly kind: 'note' | 'lessonNote' | 'why' | 'keys' }
  | { readonly kind: 'level'; readonly level: Level };

/** Where the focus is, as far as keys care: words are typed, a control has keys of its own, or neither. */
export type KeyPlace = 'text' | 'control' | 'page';

const always: Readonly<Record<string, LessonAction>> = {
  ArrowRight: { kind: 'next' },
  PageDown: { kind: 'next' },
  ArrowLeft: { kind: 'previous' },
  PageUp: { kind: 'previous' },
};
const singles: Readonly<Record<string, LessonAction>> = {
  m: { kind: 'moveOn' },
  c: { kind: 'carryOn' },
  s: { kind: 'setAside' },
  x: { kind: 'notReached' },
  n: { kind: 'note' },
  l: { kind: 'lessonNote' },
  w: { kind: 'why' },
  '?': { kind: 'keys' },
  '0': { kind: 'level', level: 0 },
  '1': { kind: 'level', level: 1 },
  '2': { kind: 'level', level: 2 },
  '3': { kind: 'level', level: 3 },
  '4': { kind: 'level', level: 4 },
};

export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
}

/**
 * What a key does, or null. In text every key belongs to the text; on a control arrows, page keys and the space bar
 * belong to the control. `singleKeys` off leaves arrows and page keys.
 */
export function lessonAction(press: KeyPress, place: KeyPlace, singleKeys: boolean): LessonAction | null {
  if (press.ctrlKey || press.altKey || press.metaKey || place === 'text') return null;
  if (press.key === ' ') return singleKeys && place === 'page' ? { kind: 'clock' } : null;
  const turn = always[press.key];
  if (turn) return place === 'page' || press.key.startsWith('Page') ? turn : null;
  return singleKeys ? (singles[press.key.toLowerCase()] ?? null) : null;
}

const typed = 'input:not([type=radio]):not([type=checkbox]), textarea, select, [contenteditable=true]';
const controls = 'button, a, summary, [role=radiogroup], [role=menu], [role=slider], input';

/** Where an element puts the keys. A button leaves arrows alone, but has the space bar for itself. */
export function keyPlace(element: { closest(selector: string): unknown } | null, key: string): KeyPlace {
  if (!element) return 'page';
  if (element.closest(typed)) return 'text';
  if (element.closest('[role=radiogroup], [role=menu], [role=slider], input')) return 'control';
  return key === ' ' && element.closest(controls) ? 'control' : 'page';
}
