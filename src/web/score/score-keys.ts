// What a key means on the score, apart from what then happens. While a segment is being moved the arrows choose its lesson.

import type { Direction } from './move-focus.ts';

export type KeyIntent =
  | { readonly kind: 'go'; readonly direction: Direction }
  | { readonly kind: 'open' | 'pin' | 'setAside' | 'move' }
  | { readonly kind: 'step'; readonly by: 1 | -1 }
  | { readonly kind: 'land' | 'giveUp' };

export interface Pressed {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
}

const directions: Readonly<Record<string, Direction>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};
const steps: Readonly<Record<string, 1 | -1>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** The intent of a key, or null where it is the browser's. `moving`: a segment is under way to another lesson. */
export function keyToIntent(pressed: Pressed, moving: boolean): KeyIntent | null {
  const { key, ctrlKey, altKey, metaKey } = pressed;
  if (altKey || metaKey) return null;
  if (moving) {
    const by = steps[key];
    if (by !== undefined) return { kind: 'step', by };
    if (key === 'Enter') return { kind: 'land' };
    return key === 'Escape' ? { kind: 'giveUp' } : null;
  }
  if (key === 'Home') return { kind: 'go', direction: ctrlKey ? 'first' : 'home' };
  if (key === 'End') return { kind: 'go', direction: ctrlKey ? 'last' : 'end' };
  if (ctrlKey) return null;
  const direction = directions[key];
  if (direction !== undefined) return { kind: 'go', direction };
  switch (key.toLowerCase()) {
    case 'enter':
    case ' ':
      return { kind: 'open' };
    case 'p':
      return { kind: 'pin' };
    case 's':
      return { kind: 'setAside' };
    case 'm':
      return { kind: 'move' };
    default:
      return null;
  }
}
