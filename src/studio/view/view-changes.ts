// What was changed, newest first, for undo.

import type { ChangesView } from '#contract';
import { erasedType } from '../erase/plan-erasure.ts';
import type { ChangeRecord, Reader } from '../record/store.ts';

/** The newest changes, at most `most`. */
export async function viewChanges(reader: Reader, most = 200): Promise<ChangesView> {
  const changes = await reader.listChanges(most);
  const byId = new Map(changes.map((c) => [c.id, c]));
  // An undo is always newer than what it undoes, so it is in the list.
  const isUndone = (change: ChangeRecord): boolean => {
    const by = change.undoneBy === null ? undefined : byId.get(change.undoneBy);
    return by !== undefined && !isUndone(by);
  };
  return {
    changes: changes
      .filter((change) => change.type !== erasedType)
      .map((change) => ({
        id: change.id,
        at: change.at,
        label: change.label,
        type: change.type,
        undone: isUndone(change),
        isUndo: change.type === 'undo',
        clockOnly: isClockOnly(change.reply),
        forGood: forGood.has(change.type),
      })),
  };
}

/** Types of changes that cannot be taken back. */
const forGood: ReadonlySet<string> = new Set(['take.eraseSounds', 'student.erase']);

const isClockOnly = (reply: unknown): boolean =>
  typeof reply === 'object' && reply !== null && 'clockOnly' in reply && reply.clockOnly === true;
