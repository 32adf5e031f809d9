// What the studio's rules ask of a database, in a few verbs. `storage` answers on SQLite and PostgreSQL alike. Readers
// cannot write; a Transactor exists only inside a change, and every row it touches is journalled, which is what undo,
// once-only delivery and the change list rest on.

import type { Result } from '#core';
import type { ChangeId, TableName, Tables } from './records.ts';

/** Equality on top-level text, number, boolean or null columns, and an inclusive range on one text column. */
export interface Query<T extends TableName> {
  readonly where?: Partial<Tables[T]>;
  readonly range?: {
    readonly column: keyof Tables[T] & string;
    readonly from?: string;
    readonly to?: string;
  };
  /** Ascending; ties are broken by id. Without it, by id. */
  readonly orderBy?: readonly (keyof Tables[T] & string)[];
}

export interface Reader {
  get<T extends TableName>(table: T, id: Tables[T]['id']): Promise<Tables[T] | null>;
  list<T extends TableName>(table: T, query?: Query<T>): Promise<readonly Tables[T][]>;
  /** Newest first. */
  listChanges(most: number): Promise<readonly ChangeRecord[]>;
  getChange(id: ChangeId): Promise<ChangeRecord | null>;
  /** The rows a change touched, in order. */
  listChangedRows(id: ChangeId): Promise<readonly ChangedRow[]>;
  /** Goes through the whole journal, oldest change first. */
  eachChange(visit: (change: JournalledChange) => void): Promise<void>;
}

export interface Transactor extends Reader {
  /** Inserts or replaces the row with this id. */
  put<T extends TableName>(table: T, row: Tables[T]): Promise<void>;
  remove<T extends TableName>(table: T, id: Tables[T]['id']): Promise<void>;
  /** Marks a change as undone by the change in hand. */
  markUndone(id: ChangeId, by: ChangeId): Promise<void>;
  /**
   * Writes the journal anew, for what has to be gone from it: every change that is there, and the rows of the change in hand
   * when it ends. A change that comes back as it was given stays as it is; ids, numbers and days stay in any case. What
   * stood there before is in the database's file until `Store.compact`.
   */
  rewriteJournal(rewrite: (change: JournalledChange) => JournalledChange): Promise<void>;
}

export interface ChangeHeader {
  readonly id: ChangeId;
  /** Audit stamp, ISO instant. */
  readonly at: string;
  /** What the teacher did, as a short sentence: "Closed Ana's lesson of 12 May". */
  readonly label: string;
  /** The command's type, `lesson.close`. */
  readonly type: string;
}

export interface ChangeRecord extends ChangeHeader {
  /** The reply that was given, so that the same change sent again gets the same answer. */
  readonly reply: unknown;
  readonly undoneBy: ChangeId | null;
}

/** A change with the rows it touched. */
export interface JournalledChange extends ChangeRecord {
  readonly rows: readonly ChangedRow[];
}

export interface ChangedRow {
  readonly table: TableName;
  readonly rowId: string;
  /** The row before and after; null where there was or is none. */
  readonly before: unknown;
  readonly after: unknown;
}

/** `label` and `reply` are known once the work is done, so the change returns them. */
export interface ChangeOutcome<R> {
  readonly label: string;
  readonly reply: R;
}

export interface Store {
  /** Reads from one consistent state. */
  read<T>(work: (reader: Reader) => Promise<T>): Promise<T>;
  /**
   * One transaction: everything or nothing. An `err` result (or a throw) rolls back. A change whose id was applied
   * before is not applied again: its first reply comes back.
   */
  change<R, E>(
    header: Omit<ChangeHeader, 'label'>,
    work: (transactor: Transactor) => Promise<Result<ChangeOutcome<R>, E>>,
  ): Promise<Result<R, E>>;
  /** Like `change`, but always rolled back and never journalled: what-if. */
  imagine<T>(work: (transactor: Transactor) => Promise<T>): Promise<T>;
  /** Drops the changes made before this instant, with their rows: they can be taken back no more. How many went comes back. */
  forgetChanges(before: string): Promise<number>;
  /** Writes the database's file anew without what was deleted from it, where the database leaves that in it. */
  compact(): Promise<Result<null, NotCompacted>>;
  /** Every row of every table and the journal, for export; and the reverse, into an empty store only. */
  dump(): Promise<StudioDump>;
  load(dump: StudioDump): Promise<Result<null, StoreNotEmpty>>;
  close(): Promise<void>;
}

export interface StudioDump {
  readonly format: 'levare-studio/1';
  readonly tables: { readonly [T in TableName]: readonly Tables[T][] };
  readonly changes: readonly JournalledChange[];
}

export type NotCompacted = { readonly kind: 'NotCompacted'; readonly detail: string };

export type StoreNotEmpty = { readonly kind: 'StoreNotEmpty'; readonly rows: number };
