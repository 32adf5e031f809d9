// Short messages at the foot of the page, kept outside React so that anything can leave one.

import type { CommandType } from '#contract';
import type { Id } from '#core';

export interface ToastAction {
  readonly label: string;
  readonly act: () => void;
}
export interface Toast {
  readonly key: number;
  readonly text: string;
  /** Sentences under the first. */
  readonly notices: readonly string[];
  readonly action: ToastAction | null;
  /** A fault is shown until it is put away. */
  readonly fault: boolean;
  /** The change it tells of; a newer toast of the same change takes its place. */
  readonly change: Id<'change'> | null;
  /** What was tried; what the next try of the same comes to takes its place. */
  readonly about: CommandType | null;
}

let toasts: readonly Toast[] = [];
let last = 0;
const listeners = new Set<() => void>();
/** Faults kept on screen at once. */
const most = 2;

function set(next: readonly Toast[]): void {
  toasts = next;
  for (const listener of listeners) listener();
}

/** Shows a message in the place of the last one; a fault stays beside it until it is put away. */
export function showToast(toast: Pick<Toast, 'text'> & Partial<Omit<Toast, 'key'>>): void {
  const whole: Toast = {
    notices: [],
    action: null,
    fault: false,
    change: null,
    about: null,
    ...toast,
    key: ++last,
  };
  // A repeated fault is said once; one that was mended is not said any more.
  const faults = toasts
    .filter((t) => t.fault && t.text !== whole.text && (t.about === null || t.about !== whole.about))
    .slice(whole.fault ? 1 - most : -most);
  set([...faults, whole]);
}

/** Puts a message away. */
export function dropToast(key: number): void {
  if (toasts.some((t) => t.key === key)) set(toasts.filter((t) => t.key !== key));
}

/** Puts all messages away: what they tell of is behind the teacher. */
export function dropToasts(): void {
  if (toasts.length > 0) set([]);
}

/** The messages shown now, oldest first. */
export const readToasts = (): readonly Toast[] => toasts;

/** Tells when messages come or go; returns how to stop. */
export function onToasts(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
