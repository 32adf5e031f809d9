import type { Command, CommandReply } from '#contract';
import { send } from '../app/send.ts';

export type SendCommand = (command: Command) => Promise<CommandReply | null>;

/**
 * How a person's change is sent: what was done is told with Undo, what changed is asked for again. Null when it was
 * refused; the reason has been shown.
 */
export function useCommand(): SendCommand {
  return send;
}
