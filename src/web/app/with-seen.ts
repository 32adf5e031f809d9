import type { Command } from '#contract';

/**
 * The same command, having seen what came before it in the same step: later commands of a step would otherwise be
 * refused for what the earlier ones did.
 */
export function withSeen(command: Command, revisions: ReadonlyMap<string, number>): Command {
  if (!('seen' in command) || !('course' in command)) return command;
  const seen = revisions.get(command.course);
  return seen === undefined ? command : { ...command, seen };
}
