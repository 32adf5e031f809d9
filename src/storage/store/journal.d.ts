import type { ChangedRow, ChangeRecord } from '#studio';
import type { NamedRow } from '../row/row-mapping.ts';
import { type Run, type Statements } from './statements.ts';
/** Writes a change and its rows at the journal's end. */
export declare function writeChange(run: Run, statements: Statements, change: ChangeRecord, rows: readonly ChangedRow[]): Promise<void>;
/** The change that a row of the journal holds. */
export declare function changeRecordOf(row: NamedRow): ChangeRecord;
/** The touched row that a row of the journal holds. */
export declare function changedRowOf(row: NamedRow): ChangedRow;
