// Changes that a person made as one step (an import with its courses) and takes back as one step.

import type { Id } from '#core';

const groups = new Map<string, readonly Id<'change'>[]>();

/** Remembers, on this page, that these changes belong together; in the order they were made. */
export function joinChanges(changes: readonly Id<'change'>[]): void {
  for (const change of changes) groups.set(change, changes);
}

/** The changes made together with this one, newest first, itself among them. */
export function changesWith(change: Id<'change'>): readonly Id<'change'>[] {
  return (groups.get(change) ?? [change]).toReversed();
}

/** Forgets a group that was taken back. */
export function partChanges(changes: readonly Id<'change'>[]): void {
  for (const change of changes) groups.delete(change);
}
