// Why a backup could not be restored, and what to tell whoever asked for it.
import { formatOpenFault } from '../open-fault.js';
/** The fault in sentences: what, where, how to mend. */
export function formatRestoreFault(fault) {
    switch (fault.kind) {
        case 'NoSuchBackup':
            return `There is no backup ${fault.backup}, neither as a path nor in ${fault.folder}. Nothing was changed. Name one of the files in that folder.`;
        case 'BackupUnusable':
            return `The backup ${fault.backup} cannot be used: ${fault.detail}. Nothing was changed. Try an older one.`;
        default:
            return formatOpenFault(fault);
    }
}
//# sourceMappingURL=restore-fault.js.map