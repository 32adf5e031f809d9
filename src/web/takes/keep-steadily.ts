// Keeping a take through a studio that does not answer: the same changes are sent again until it does, and count once.

import type { Command, CommandReply } from '#contract';
import type { Id, Result } from '#core';
import { type ApiFault, sendCommand } from '../app/api.ts';

/** Between two tries, in milliseconds. */
const pause = 2000;

/**
 * A way to send for `sendTogether`: `ids` are the changes' own, so that what the studio took without its answer arriving is
 * not done twice. `onWaiting` tells whether it is being waited for; `isGivenUp` ends the waiting.
 */
export function sendSteadily(
  ids: readonly Id<'change'>[],
  onWaiting: (isWaiting: boolean) => void,
  isGivenUp: () => boolean,
): (command: Command, at: number) => Promise<Result<CommandReply, ApiFault>> {
  return async (command, at) => {
    for (;;) {
      const id = ids[at];
      if (id === undefined) throw new Error('a change for each command');
      const reply = await sendCommand(id, command);
      const isAnswered = reply.ok || reply.error.offline !== true;
      onWaiting(!isAnswered && !isGivenUp());
      if (isAnswered || isGivenUp()) return reply;
      await new Promise((done) => setTimeout(done, pause));
    }
  };
}
