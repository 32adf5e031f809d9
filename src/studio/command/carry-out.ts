// Carries out one command inside one change of the store: load, decide, save, plan again, reply. The same change sent
// twice is applied once and answered alike.

import type { Command, CommandOf, CommandReply, Fault, Send } from '#contract';
import { err, ok, type Result } from '#core';
import type { ChangeId } from '../record/records.ts';
import type { Store, Transactor } from '../record/store.ts';
import { studioId } from '../record/studio-id.ts';
import { type Desk, type Handler, lookAnew, type Outside } from './desk.ts';
import { handlers } from './handlers.ts';
import { settleCourses } from './settle-courses.ts';
import { sweepSounds } from './take-sounds.ts';

/** Applies a command once, or says why not; then nothing of it is saved. */
export async function carryOut(
  store: Store,
  send: Send,
  outside: Outside,
): Promise<Result<CommandReply, Fault>> {
  const header = { id: send.id, at: outside.clock.instant(), type: send.command.type };
  const done = await store.change<CommandReply, Fault>(header, async (tx) => {
    const applied = await applyCommand(tx, send.id, send.command, outside, false);
    return applied.ok ? ok({ label: applied.value.label, reply: applied.value }) : applied;
  });
  return done.ok && send.command.type === 'student.erase' ? ok(await compact(store, done.value)) : done;
}

/** What was erased is to be in the file no more; where that has to wait, the reply says so. */
async function compact(store: Store, reply: CommandReply): Promise<CommandReply> {
  const compacted = await store.compact();
  if (compacted.ok) return reply;
  const notice = `The studio’s file could not be written anew just now (${compacted.error.detail}), and may hold traces until Levare is started again with room on its disk.`;
  return { ...reply, notices: [...reply.notices, notice] };
}

/** The body of `carryOut`, over a transactor: also what what-if runs. */
export async function applyCommand(
  tx: Transactor,
  change: ChangeId,
  command: Command,
  outside: Outside,
  imagining: boolean,
): Promise<Result<CommandReply, Fault>> {
  const desk: Desk = {
    tx,
    outside,
    today: outside.clock.today(),
    change,
    imagining,
    notices: [],
    inHand: new Map(),
    clockOnly: false,
    wrote: null,
  };
  if (command.type !== 'studio.found' && (await tx.get('studio', studioId)) === null)
    return err({
      kind: 'NotAllowedNow',
      message: 'There is no studio here yet. Open the start page and set one up first.',
    });
  const done = await (command.type === 'together'
    ? handleEach(desk, command)
    : handle(command.type, desk, command));
  if (!done.ok) return done;
  if (!imagining) await sweepSounds(desk);
  const courses = await settleCourses(desk);
  return ok({
    change,
    label: done.value,
    courses,
    notices: [...new Set(desk.notices)],
    ...(desk.clockOnly ? { clockOnly: true } : {}),
    ...(desk.wrote ? { wrote: desk.wrote } : {}),
  });
}

async function handleEach(
  desk: Desk,
  { label, commands }: CommandOf<'together'>,
): Promise<Result<string, Fault>> {
  for (const command of commands) {
    const done = await handle(command.type, desk, command);
    if (!done.ok) return done;
    lookAnew(desk);
  }
  return ok(label);
}

function handle<T extends keyof typeof handlers>(type: T, desk: Desk, command: CommandOf<T>) {
  const handler: Handler<T> = handlers[type];
  return handler(desk, command);
}
