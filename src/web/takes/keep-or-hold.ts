// Keeping a take though the studio may not answer: then it waits in this browser, as what is written in a lesson does, and
// is kept once when the studio is back, whatever became of the page.

import type { CommandReply } from '#contract';
import { present } from '#core';
import { sendCommand } from '../app/api.ts';
import type { OutboxCommand } from '../app/outbox-queue.ts';
import { sendInTurn } from '../app/send.ts';
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
  const sendNth = (at: number) => {
    const { command, id } = present(changes[at], 'a change for each command');
    return sendCommand(id, command);
  };
  if (theOutbox.status().pending > 0) await theOutbox.flush();
  const first = await sendNth(0);
  if (!first.ok && first.error.offline === true) {
    hold(0);
    return true;
  }
  const replies = await sendInTurn(commands, label, async (_, at) => {
    if (at === 0) return first;
    const reply = await sendNth(at);
    if (reply.ok || reply.error.offline !== true) return reply;
    hold(at);
    return first;
  });
  return replies !== null;
}
