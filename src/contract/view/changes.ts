// The list of changes.

import type { Id } from '#core';

export interface ChangesView {
  readonly changes: readonly {
    readonly id: Id<'change'>;
    readonly at: string;
    readonly label: string;
    readonly type: string;
    readonly undone: boolean;
    readonly isUndo: boolean;
    /** Only a running clock was kept: nothing that a person did, and would take back by itself. */
    readonly clockOnly: boolean;
    /** What it deleted is gone for good: it cannot be taken back. */
    readonly forGood: boolean;
  }[];
}
