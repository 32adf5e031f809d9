// A save that may be tried again: the same words go out under the same change id, so that they count once even when the
// first answer was lost on the way.

import type { Command, CommandReply } from '#contract';
import type { Id, Result } from '#core';
import { type ApiFault, sendCommand } from '../../app/api.ts';
import { refreshAfter } from '../../app/query-client.ts';
import { showDone } from '../../app/send.ts';
import { theOutbox } from '../../app/the-outbox.ts';
import { newId } from '../../new-id.ts';

/** One sender for one editor. What was done is told with Undo; a fault is the caller's to show. */
export function createSender(): (command: Command) => Promise<Result<CommandReply, ApiFault>> {
  let last: { readonly text: string; readonly id: Id<'change'> } | null = null;
  return async (command) => {
    if (theOutbox.status().pending > 0) await theOutbox.flush();
    const text = JSON.stringify(command);
    if (last?.text !== text) last = { text, id: newId('change') };
    const reply = await sendCommand(last.id, command);
    if (reply.ok || !reply.error.offline) last = null;
    if (reply.ok) {
      showDone(reply.value);
      await refreshAfter(command.type);
    }
    return reply;
  };
}
