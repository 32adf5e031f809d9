// Why a backup could not be restored, and what to tell whoever asked for it.

import { formatOpenFault, type OpenFault } from '../open-fault.ts';

export type RestoreFault =
  | OpenFault
  | { readonly kind: 'NoSuchBackup'; readonly backup: string; readonly folder: string }
  | { readonly kind: 'BackupUnusable'; readonly backup: string; readonly detail: string };

/** The fault in sentences: what, where, how to mend. */
export function formatRestoreFault(fault: RestoreFault): string {
  switch (fault.kind) {
    case 'NoSuchBackup':
      return `There is no backup ${fault.backup}, neither as a path nor in ${fault.folder}. Nothing was changed. Name one of the files in that folder.`;
    case 'BackupUnusable':
      return `The backup ${fault.backup} cannot be used: ${fault.detail}. Nothing was changed. Try an older one.`;
    default:
      return formatOpenFault(fault);
  }
}
