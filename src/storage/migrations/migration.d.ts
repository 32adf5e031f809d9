import type { Kysely } from 'kysely';
import type { Dialect } from '../dialect/dialect.ts';
import type { StudioDatabase } from '../store/statements.ts';
export interface Migration {
    /** From 1, without gaps. */
    readonly number: number;
    readonly name: string;
    apply(database: Kysely<StudioDatabase>, dialect: Dialect): Promise<void>;
}
