// Sends an erasure, and lets go of what this browser holds of the student: nothing tells of it with Undo.

import type { CommandOf, ErasureView } from '#contract';
import { newId } from '../new-id.ts';
import { words } from '../words/index.ts';
import { sendCommand } from './api.ts';
import { queryClient } from './query-client.ts';
import { showFault } from './send.ts';
import { theOutbox } from './the-outbox.ts';
import { dropToasts, showToast } from './toasts.ts';

/** False when it was refused; the fault has been shown. `leave` goes to a page that does not show the student. */
export async function eraseStudent(
  command: CommandOf<'student.erase'>,
  ids: ErasureView['ids'],
  leave: () => void,
): Promise<boolean> {
  if (theOutbox.status().pending > 0) await theOutbox.flush();
  const reply = await sendCommand(newId('change'), command);
  if (!reply.ok) {
    showFault(reply.error, command.type);
    return false;
  }
  for (const shelf of [() => localStorage, () => sessionStorage]) forgetKept(shelf, ids);
  for (const { id, command: held } of theOutbox.status().refused)
    if (held.type === 'take.keep' && held.take.student === command.student) theOutbox.discard(id);
  // What was said before may name the student.
  dropToasts();
  const { notices } = reply.value;
  showToast({ text: words.erase.done, notices, fault: notices.length > 0 });
  leave();
  queryClient.removeQueries({ type: 'inactive' });
  // What told of the erasure may still be going, and is not to be asked for again.
  await queryClient.invalidateQueries({ predicate: ({ queryKey: [name] }) => name !== 'erasure' });
  queryClient.removeQueries({ queryKey: ['erasure'] });
  return true;
}

/** Clocks, texts and drafts are kept under the ids of what they belong to. */
function forgetKept(shelf: () => Storage, ids: readonly string[]): void {
  try {
    const kept = shelf();
    const keys = Array.from({ length: kept.length }, (_, at) => kept.key(at) ?? '');
    for (const key of keys) if (ids.some((id) => key.includes(id))) kept.removeItem(key);
  } catch {
    // A browser that keeps nothing has nothing to forget.
  }
}
