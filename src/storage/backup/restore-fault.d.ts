import { type OpenFault } from '../open-fault.ts';
export type RestoreFault = OpenFault | {
    readonly kind: 'NoSuchBackup';
    readonly backup: string;
    readonly folder: string;
} | {
    readonly kind: 'BackupUnusable';
    readonly backup: string;
    readonly detail: string;
};
/** The fault in sentences: what, where, how to mend. */
export declare function formatRestoreFault(fault: RestoreFault): string;
