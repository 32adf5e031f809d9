// The one suite that every database answers to. Handed a way to open an empty store, it asks of it what `Store` in
// `#studio` promises.

import { describe } from 'vitest';
import { describeChanges } from './contract/changes.contract.ts';
import { describeDump } from './contract/dump.contract.ts';
import { describeErasing } from './contract/erasing.contract.ts';
import { describeJournal } from './contract/journal.contract.ts';
import { describeQueries } from './contract/queries.contract.ts';
import { describeRows } from './contract/rows.contract.ts';
import type { StoreUnderTest } from './contract/store-under-test.contract.ts';
import { describeTogether } from './contract/together.contract.ts';

export function describeStore(name: string, under: StoreUnderTest): void {
  describe(`store on ${name}`, () => {
    describeRows(under);
    describeQueries(under);
    describeChanges(under);
    describeJournal(under);
    describeDump(under);
    describeErasing(under);
    describeTogether(under);
  });
}
