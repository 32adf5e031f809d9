// A unit being written is kept in this browser until it is saved, by unit and by the version it was begun from.

import type { UnitDraft } from './unit-draft.ts';

const shape = 'levare-unit-draft/1';
const prefix = 'levare.unit-draft.';

/** What is being written: a new unit, a unit of the library, or a student's copy. */
export type DraftPlace = 'new' | `unit:${string}` | `course-unit:${string}`;

export interface KeptDraft {
  readonly place: DraftPlace;
  readonly version: number;
  /** When it was last written to: an ISO instant. */
  readonly at: string;
  readonly draft: UnitDraft;
}

/** What a browser offers to keep things in; what it throws is for the caller of `keepDraft` to bear. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

const keyOf = (place: DraftPlace, version: number) => `${prefix}${place}.${version}`;

/** False when the browser keeps nothing (private window, full). */
export function keepDraft(shelf: Shelf, { place, version, at, draft }: KeptDraft): boolean {
  try {
    shelf.setItem(keyOf(place, version), JSON.stringify({ shape, at, draft }));
    return true;
  } catch {
    return false;
  }
}

/** The newest kept draft of this place, from whichever version it was begun; null when there is none to read. */
export function findDraft(shelf: Shelf, place: DraftPlace): KeptDraft | null {
  const found: KeptDraft[] = [];
  for (const { key, version } of keysOf(shelf, place)) {
    const kept = readKept(readItem(shelf, key));
    if (kept) found.push({ place, version, ...kept });
  }
  return found.sort((a, b) => b.at.localeCompare(a.at))[0] ?? null;
}

/** Throws away what is kept of this place, from every version. */
export function dropDrafts(shelf: Shelf, place: DraftPlace): void {
  for (const { key } of keysOf(shelf, place)) {
    try {
      shelf.removeItem(key);
    } catch {
      // A browser that keeps nothing has nothing to throw away.
    }
  }
}

function keysOf(
  shelf: Shelf,
  place: DraftPlace,
): readonly { readonly key: string; readonly version: number }[] {
  try {
    const keys = Array.from({ length: shelf.length }, (_, at) => shelf.key(at) ?? '');
    return keys.flatMap((key) => {
      const version = key.startsWith(`${prefix}${place}.`) ? key.slice(prefix.length + place.length + 1) : '';
      return /^\d+$/.test(version) ? [{ key, version: Number(version) }] : [];
    });
  } catch {
    return [];
  }
}

function readItem(shelf: Shelf, key: string): string {
  try {
    return shelf.getItem(key) ?? '';
  } catch {
    return '';
  }
}

function readKept(text: string): { readonly at: string; readonly draft: UnitDraft } | null {
  try {
    const value: unknown = JSON.parse(text);
    return isKept(value) ? { at: value.at, draft: withNewer(value.draft) } : null;
  } catch {
    return null;
  }
}

/** A draft kept by an earlier Levare has nothing listened for. */
function withNewer(draft: UnitDraft): UnitDraft {
  const listenForOf = (check: Partial<UnitDraft['checks'][number]>) => check.listenFor ?? [];
  return {
    ...draft,
    checks: draft.checks.map((check) => ({ ...check, listenFor: listenForOf(check) })),
  };
}

// Only `keepDraft` writes under this shape, so its mark and the lists that would be walked are enough to know it by.
function isKept(value: unknown): value is { readonly at: string; readonly draft: UnitDraft } {
  if (typeof value !== 'object' || value === null) return false;
  const { shape: given, at, draft } = value as Readonly<Record<string, unknown>>;
  if (given !== shape || typeof at !== 'string' || typeof draft !== 'object' || draft === null) return false;
  const fields = draft as Readonly<Record<string, unknown>>;
  return (
    ['activities', 'extensions', 'checks', 'next', 'stages', 'families', 'alsoSkills', 'skillOrder'].every(
      (name) => Array.isArray(fields[name]),
    ) && typeof fields['title'] === 'string'
  );
}
