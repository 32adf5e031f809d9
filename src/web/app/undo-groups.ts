// Changes that a person made as one step (an import with its courses) and takes back as one step. Kept for this tab,
// so that a reload does not part them.

import { type Id, isId } from '#core';

const key = 'levare-together';
const most = 50;

function read(): readonly (readonly Id<'change'>[])[] {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(key) ?? '[]');
    if (!Array.isArray(kept)) return [];
    return kept.map((group: unknown) =>
      Array.isArray(group) ? group.filter((id): id is Id<'change'> => isId('change', String(id))) : [],
    );
  } catch {
    return [];
  }
}

function write(groups: readonly (readonly Id<'change'>[])[]): void {
  try {
    sessionStorage.setItem(key, JSON.stringify(groups.slice(-most)));
  } catch {
    // A browser that keeps nothing takes such changes back one by one.
  }
}

/** Remembers that these changes belong together; in the order they were made. */
export function joinChanges(changes: readonly Id<'change'>[]): void {
  if (changes.length > 1) write([...read(), changes]);
}

/** The changes made together with this one, newest first, itself among them. */
export function changesWith(change: Id<'change'>): readonly Id<'change'>[] {
  const group = read().find((changes) => changes.includes(change));
  return (group ?? [change]).toReversed();
}
