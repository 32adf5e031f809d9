// Whether a SQLite file can be trusted: it reads through, its indexes agree with its rows, no reference is broken.
import Database from 'better-sqlite3';
import { err, ok } from '#core';
import { isDamage, messageOf } from '../sqlite/sqlite-error.js';
/** Checks a file that nothing else has open, and makes it one file without a WAL beside it. */
export function verifyFile(path) {
    try {
        const handle = new Database(path, { fileMustExist: true });
        try {
            handle.pragma('journal_mode = DELETE');
            const [first] = handle.pragma('integrity_check(1)', { simple: false });
            if (first?.integrity_check !== 'ok')
                return err({ kind: 'damaged', detail: first?.integrity_check ?? 'the integrity check says nothing' });
            const broken = handle.pragma('foreign_key_check');
            if (broken[0])
                return err({ kind: 'damaged', detail: `${broken[0].table} refers to a missing ${broken[0].parent}` });
            return ok(null);
        }
        finally {
            handle.close();
        }
    }
    catch (error) {
        return err({ kind: isDamage(error) ? 'damaged' : 'unreadable', detail: messageOf(error) });
    }
}
//# sourceMappingURL=verify-file.js.map