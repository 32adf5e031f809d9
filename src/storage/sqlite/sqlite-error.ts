// What SQLite's and the file system's errors mean to us.

/** Whether the file's content is at fault: not a database, or a damaged one (SQLITE_NOTADB, SQLITE_CORRUPT and its kin). */
export const isDamage = (error: unknown): boolean => /^SQLITE_(NOTADB|CORRUPT)/.test(codeOf(error));

/** Whether someone else has the file locked. */
export const isBusy = (error: unknown): boolean => /^SQLITE_(BUSY|LOCKED)/.test(codeOf(error));

/** Whether the world is at fault: no right, no space, no such folder, a disk that fails. */
export const isWorld = (error: unknown): boolean =>
  /^(SQLITE_(CANTOPEN|READONLY|FULL|IOERR|PERM|BUSY|LOCKED|AUTH|NOLFS)|E[A-Z]+$)/.test(codeOf(error));

/**
 * Why what was to be kept could not be: the disk is full, may not be written, or fails; a PostgreSQL that is full or gone.
 * Null where the error is of another kind. PostgreSQL's codes: its manual, appendix A.
 */
export function explainTrouble(error: unknown): string | null {
  const code = codeOf(error);
  if (/^(SQLITE_FULL|ENOSPC|EDQUOT|SQLITE_IOERR_SHMSIZE)$/.test(code))
    return 'The disk on which Levare keeps the studio is full. Nothing was changed. Free some space on it, and try again.';
  if (isServerGone(error))
    // Whether a change was kept whose answer was lost, nobody here can know; sent again under its id it counts once.
    return 'The database in which Levare keeps the studio does not answer. Look after it; then see whether what you did last is there, and do it again if it is not.';
  if (isWorld(error))
    return `Levare cannot write where it keeps the studio (${messageOf(error)}). Nothing was changed. Look after that disk and its folder, and try again.`;
  return null;
}

/** PostgreSQL that is full, gone or out of reach. A connection that breaks off has no code: these are the words of pg 8. */
const isServerGone = (error: unknown): boolean =>
  /^(08\w{3}|53\w{3}|57P\d{2}|ECONN\w+|E(HOST|NET)UNREACH|ETIMEDOUT|ENOTFOUND|EAI_AGAIN|EPIPE)$/.test(
    codeOf(error),
  ) ||
  (error instanceof Error &&
    /^(Connection terminated|timeout exceeded when trying to connect|timeout expired|Client .* is not queryable)/.test(
      error.message,
    ));

/** The error in words, with its code. */
export function messageOf(error: unknown): string {
  const code = codeOf(error);
  const message = error instanceof Error ? error.message : String(error);
  return code === '' || message.includes(code) ? message : `${message} (${code})`;
}

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : '';
