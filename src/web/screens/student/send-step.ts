// Sends several commands on one course as one step with one Undo, each having seen what those before it did.

import type { Command, CommandReply } from '#contract';
import { sendCommand } from '../../app/api.ts';
import { queryClient } from '../../app/query-client.ts';
import { showDone, showFault } from '../../app/send.ts';
import { joinChanges } from '../../app/undo-groups.ts';
import { newId } from '../../new-id.ts';
import { withSeen } from './what-if-commands.ts';

/** True when all were taken; on a refusal the reason is shown and those before it are taken back. */
export async function sendStep(commands: readonly Command[], label: string): Promise<boolean> {
  const revisions = new Map<string, number>();
  const done: CommandReply[] = [];
  for (const command of commands) {
    const reply = await sendCommand(newId('change'), withSeen(command, revisions));
    if (!reply.ok) {
      showFault(reply.error);
      for (const { change } of done.toReversed())
        await sendCommand(newId('change'), { type: 'undo', change });
      await queryClient.invalidateQueries();
      return false;
    }
    for (const { course, revision } of reply.value.courses) revisions.set(course, revision);
    done.push(reply.value);
  }
  joinChanges(done.map((reply) => reply.change));
  const last = done.at(-1);
  const notices = [...new Set(done.flatMap((reply) => reply.notices))];
  if (last) showDone({ ...last, label: done.length === 1 ? last.label : label, notices });
  await queryClient.invalidateQueries();
  return true;
}
