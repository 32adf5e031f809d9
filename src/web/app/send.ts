// A person's change on its way: sent, told of with Undo, and its views asked for again. Used by the hooks and the frame.

import type { ChangesView, Command, CommandReply, CommandType, Step } from '#contract';
import type { Id } from '#core';
import { newId } from '../new-id.ts';
import { words } from '../words/index.ts';
import { type ApiFault, getView, sendCommand } from './api.ts';
import { queryClient, refreshAfter } from './query-client.ts';
import { keys } from './query-keys.ts';
import { theOutbox } from './the-outbox.ts';
import { dropToasts, showToast } from './toasts.ts';
import { changesWith, joinChanges } from './undo-groups.ts';

/** Shows what went wrong, with the way on where there is one; `about` is what was tried, if it can be tried again. */
export function showFault(fault: ApiFault, about: CommandType | null = null): void {
  const newest = { label: words.frame.lookAtNewest, act: () => void queryClient.invalidateQueries() };
  const { takeBack } = fault;
  const all = takeBack && {
    label: words.frame.takeAllBack(takeBack.length),
    act: () => void undoInOrder(takeBack),
  };
  showToast({
    text: fault.message,
    notices: fault.details ?? [],
    fault: true,
    about,
    action: all ?? (fault.kind === 'ChangedElsewhere' ? newest : null),
  });
}

/** Shows what was done, with Undo. */
export function showDone(reply: CommandReply, about: CommandType | null = null): void {
  showToast({
    text: reply.label,
    notices: reply.notices,
    change: reply.change,
    about,
    action: { label: words.frame.undo, act: () => void undoChange(reply.change) },
  });
}

/** Sends a command after whatever the outbox still holds. Null when it was refused; the fault has been shown. */
export async function send(command: Command): Promise<CommandReply | null> {
  if (theOutbox.status().pending > 0) await theOutbox.flush();
  const reply = await sendCommand(newId('change'), command);
  if (!reply.ok) {
    showFault(reply.error, command.type);
    return null;
  }
  // A studio just founded has nothing before it to go back to, and what was refused on the welcome is done with.
  if (command.type === 'studio.found') dropToasts();
  else showDone(reply.value, command.type);
  await refreshAfter(command.type);
  return reply.value;
}

/**
 * Sends several commands as one step: all are taken or none, one message tells of them, one Undo takes them back. `label`
 * names the step; one command alone says what it did itself. Null when one was refused; the fault has been shown.
 */
export function sendTogether(commands: readonly Step[], label: string): Promise<CommandReply | null> {
  const [only, ...others] = commands;
  return send(only && others.length === 0 ? only : { type: 'together', label, commands: [...commands] });
}

/**
 * Sends commands one after another as one step, for those that are changes of their own. Null when one was refused; the
 * fault has been shown and what went before it taken back. `sendOne` is how each is sent.
 */
export async function sendInTurn(
  commands: readonly Command[],
  label: (replies: readonly CommandReply[]) => string,
  sendOne: (command: Command, at: number) => ReturnType<typeof sendCommand> = (command) =>
    sendCommand(newId('change'), command),
): Promise<readonly CommandReply[] | null> {
  if (theOutbox.status().pending > 0) await theOutbox.flush();
  const done: CommandReply[] = [];
  for (const [at, command] of commands.entries()) {
    const reply = await sendOne(command, at);
    if (!reply.ok) {
      showFault(reply.error);
      for (const { change } of done.toReversed())
        await sendCommand(newId('change'), { type: 'undo', change });
      await queryClient.invalidateQueries();
      return null;
    }
    done.push(reply.value);
  }
  joinChanges(done.map((reply) => reply.change));
  const last = done.at(-1);
  const notices = [...new Set(done.flatMap((reply) => reply.notices))];
  if (last) showDone({ ...last, label: label(done), notices });
  await queryClient.invalidateQueries();
  return done;
}

/** Takes changes back one after another, as one step that is named after the last of them. */
async function undoInOrder(changes: readonly Id<'change'>[]): Promise<readonly CommandReply[] | null> {
  return sendInTurn(
    changes.map((one): Command => ({ type: 'undo', change: one })),
    // The last to be taken back was the first made: it names the step.
    (replies) => words.frame.andMore(replies.at(-1)?.label ?? '', replies.length - 1),
  );
}

/** Takes a change back, with all that was done in the same step. Null when that was refused. */
export async function undoChange(change: Id<'change'>): Promise<CommandReply | null> {
  const together = changesWith(change);
  if (together.length === 1) return send({ type: 'undo', change });
  return (await undoInOrder(together))?.at(-1) ?? null;
}

/**
 * The newest change that a person made and can take back, neither undone nor itself an undo; and what running clocks
 * kept since, newest first.
 */
export function lastUndoable({ changes }: ChangesView): {
  readonly change: Id<'change'> | null;
  readonly clocks: readonly Id<'change'>[];
} {
  const standing = changes.filter((change) => !change.undone && !change.isUndo);
  const at = standing.findIndex((change) => !change.clockOnly);
  const clocks = (at < 0 ? [] : standing.slice(0, at)).map((change) => change.id);
  return { change: standing[at]?.id ?? null, clocks };
}

/** Takes the newest change back; says so when there is none. */
export async function undoLast(): Promise<void> {
  if (theOutbox.status().pending > 0) await theOutbox.flush();
  try {
    const view = await queryClient.fetchQuery({
      queryKey: keys.changes,
      queryFn: () => getView<ChangesView>('/api/changes'),
      staleTime: 0,
    });
    const { change, clocks } = lastUndoable(view);
    if (change === null) showToast({ text: words.frame.nothingToUndo });
    else if (clocks.length === 0 || changesWith(change).length > 1) await undoChange(change);
    else await undoUnder(change, clocks);
  } catch {
    showToast({ text: words.frame.offline, fault: true });
  }
}

/** Takes a change back alone; where a clock that ran on has written over it, with what the clock kept since. */
async function undoUnder(change: Id<'change'>, clocks: readonly Id<'change'>[]): Promise<void> {
  const alone = await sendCommand(newId('change'), { type: 'undo', change });
  if (alone.ok) {
    showDone(alone.value, 'undo');
    await refreshAfter('undo');
  } else if (alone.error.kind === 'ChangedElsewhere') {
    const all = [...clocks, change].map((one): Command => ({ type: 'undo', change: one }));
    await sendInTurn(all, (replies) => replies.at(-1)?.label ?? '');
  } else showFault(alone.error, 'undo');
}

/** The fault with the text that was refused, so that it can still be copied. */
function withText(fault: ApiFault, text: string): ApiFault {
  return text === '' ? fault : { ...fault, details: [...(fault.details ?? []), words.frame.notTaken(text)] };
}

/**
 * Tells of what the outbox got back: refusals, notices, a closed lesson or a kept take with Undo, and once what makes it
 * wait, where that is for the teacher to mend.
 */
export function tellOutboxReplies(): () => void {
  let told: string | null = null;
  const stop = theOutbox.subscribe(() => {
    const { trouble } = theOutbox.status();
    if (trouble !== null && trouble !== told)
      showToast({ text: trouble, notices: [words.frame.keptMeanwhile], fault: true });
    told = trouble;
  });
  const deaf = theOutbox.onSettled(({ command, reply }) => {
    if (!reply.ok && command.type === 'take.keep')
      showToast({
        text: words.takes.refused.told(command.take.title, reply.error.message),
        notices: [words.takes.refused.stays],
        fault: true,
        about: command.type,
      });
    else if (!reply.ok) showFault(withText(reply.error, 'text' in command ? command.text : ''));
    else if (command.type === 'lesson.close' || command.type === 'take.keep')
      showDone(reply.value, command.type);
    else if (reply.value.notices.length > 0) showToast({ text: reply.value.notices.join(' ') });
    if (theOutbox.status().pending <= 1) void refreshAfter(command.type);
  });
  return () => {
    stop();
    deaf();
  };
}
