// Erases in a copy of the studio, a backup, what was erased in the studio itself. Nothing is planned again there: a copy
// stays what the studio was on its day.

import type { CommandOf, Send } from '#contract';
import { err, ok } from '#core';
import { settleFamily } from '../command/family-commands.ts';
import type { Store } from '../record/store.ts';
import { applyErasure, planErasure } from './plan-erasure.ts';

/** Whether there was anything to erase. The copy's file holds nothing of it afterwards; throws where that cannot be. */
export async function eraseInCopy(
  store: Store,
  { id, command }: { readonly id: Send['id']; readonly command: CommandOf<'student.erase'> },
  at: string,
): Promise<boolean> {
  const done = await store.change({ id, at, type: command.type }, async (tx) => {
    const erasure = await planErasure(tx, command);
    if (erasure === null) return err(null);
    const family = (await tx.get('student', command.student))?.family ?? null;
    await applyErasure(tx, erasure);
    await settleFamily(tx, family);
    return ok({
      label: 'Erased a student for good',
      reply: { change: id, label: '', courses: [], notices: [] },
    });
  });
  if (!done.ok) return false;
  const compacted = await store.compact();
  if (!compacted.ok) throw new Error(compacted.error.detail);
  return true;
}
