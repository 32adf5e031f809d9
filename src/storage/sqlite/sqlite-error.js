// What SQLite's and the file system's errors mean to us.
/** Whether the file's content is at fault: not a database, or a damaged one (SQLITE_NOTADB, SQLITE_CORRUPT and its kin). */
export const isDamage = (error) => /^SQLITE_(NOTADB|CORRUPT)/.test(codeOf(error));
/** Whether someone else has the file locked. */
export const isBusy = (error) => /^SQLITE_(BUSY|LOCKED)/.test(codeOf(error));
/** Whether the world is at fault: no right, no space, no such folder, a disk that fails. */
export const isWorld = (error) => /^(SQLITE_(CANTOPEN|READONLY|FULL|IOERR|PERM|BUSY|LOCKED|AUTH|NOLFS)|E[A-Z]+$)/.test(codeOf(error));
/** The error in words, with its code. */
export function messageOf(error) {
    const code = codeOf(error);
    const message = error instanceof Error ? error.message : String(error);
    return code === '' || message.includes(code) ? message : `${message} (${code})`;
}
const codeOf = (error) => error instanceof Error && 'code' in error ? String(error.code) : '';
//# sourceMappingURL=sqlite-error.js.map