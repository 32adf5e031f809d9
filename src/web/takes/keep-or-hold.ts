// Keeping a take though the studio may not answer: then it waits in this browser, as what is written in a lesson does, and
// is kept once when the studio is back, whatever became of the page.

import type { CommandReply } from '#contract';
import { sendCommand } from '../app/api.ts';
import type { OutboxCommand } from '../app/outbox-queue.ts';
import { sendTogether } from '../app/send.ts';
import { theOutbox } from '../app/the-outbox.ts';
import { showToast } from '../app/toasts.ts';
import { newId } from '../new-id.ts';
import { words } from '../words/index.ts';

/** Keeps it as one step, or leaves it to the outbox from the first command on that has no answer. False when it was refused. */
export async function keepOrHold(
  commands: readonly [OutboxCommand, ...OutboxCommand[]],
  label: (replies: readonly CommandReply[]) => string,
): Promise<boolean> {
  // The studio may have taken what it did not answer: the same change once more is not done twice.
  const changes = commands.map((command) => ({ command, id: newId('change') }));
  const hold = (from: number) => {
    for (const { command, id } of changes.slice(from)) theOutbox.post(command, id);
    showToast({ text: words.takes.result.held });
  };
  if (theOutbox.status().pending > 0) await theOutbox.flush();
  const first = await sendCommand(changes[0]?.id ?? newId('change'), commands[0]);
  if (!first.ok && first.error.offline === true) {
    hold(0);
    return true;
  }
  const replies = await sendTogether(commands, label, async (command, at) => {
    if (at === 0) return first;
    const reply = await sendCommand(changes[at]?.id ?? newId('change'), command);
    if (reply.ok || reply.error.offline !== true) return reply;
    hold(at);
    return first;
  });
  return replies !== null;
}
