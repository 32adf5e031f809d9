// Keeping a take though the studio may not answer: then it waits in this browser, as what is written in a lesson does, and
// is kept once when the studio is back, whatever became of the page.

import type { CommandReply } from '#contract';
import { present, type Result } from '#core';
import { type ApiFault, sendCommand } from '../app/api.ts';
import { type OutboxCommand, patienceOf } from '../app/outbox-queue.ts';
import { sendInTurn } from '../app/send.ts';
import { afterMilliseconds, theOutbox } from '../app/the-outbox.ts';
import { showToast } from '../app/toasts.ts';
import { newId } from '../new-id.ts';
import { words } from '../words/index.ts';

type Reply = Result<CommandReply, ApiFault>;

/**
 * How long the sheet stays open for an answer, in milliseconds. A large sound may be longer on its way: it goes on, and the
 * outbox has what comes of it.
 */
const longestInSheet = 10_000;

/** What comes in that time; null where nothing did. */
const soon = <T>(coming: Promise<T>): Promise<T | null> =>
  Promise.race([
    coming,
    new Promise<null>((done) => {
      afterMilliseconds(longestInSheet, () => done(null));
    }),
  ]);

/** Keeps it as one step, or leaves it to the outbox from the first command on that has no answer. False when it was refused. */
export async function keepOrHold(
  commands: readonly [OutboxCommand, ...OutboxCommand[]],
  label: (replies: readonly CommandReply[]) => string,
): Promise<boolean> {
  // The studio may have taken what it did not answer: the same change once more is not done twice.
  const changes = commands.map((command) => ({ command, id: newId('change') }));
  const hold = (from: number, sent?: Promise<Reply>) => {
    for (const [at, { command, id }] of changes.slice(from).entries())
      theOutbox.post(command, id, at === 0 ? sent : undefined);
    showToast({ text: words.takes.result.held });
  };
  /** Null when it was left to the outbox. */
  const sendOrHold = async (at: number): Promise<Reply | null> => {
    const { command, id } = present(changes[at], 'a change for each command');
    const sent = sendCommand(id, command, patienceOf(command, 0));
    const reply = await soon(sent);
    if (reply !== null && (reply.ok || reply.error.offline !== true)) return reply;
    hold(at, reply === null ? sent : undefined);
    return null;
  };
  if (theOutbox.status().pending > 0) await soon(theOutbox.flush());
  // What waits goes first.
  if (theOutbox.status().pending > 0) {
    hold(0);
    return true;
  }
  const first = await sendOrHold(0);
  if (first === null) return true;
  const replies = await sendInTurn(commands, label, async (_, at) =>
    at === 0 ? first : ((await sendOrHold(at)) ?? first),
  );
  return replies !== null;
}
