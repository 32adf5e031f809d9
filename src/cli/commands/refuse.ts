/**
 * Says why a command was not carried out and gives its exit status: 1 it could not be done, 2 the words or files given
 * are at fault.
 */
export function refuse(command: string, reason: string, status: 1 | 2 = 2): 1 | 2 {
  console.error(`levare ${command}: ${reason}`);
  return status;
}
