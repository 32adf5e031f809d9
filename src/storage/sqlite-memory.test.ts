import { createFixedClock, type PlainDate } from '#core';
import { createMemoryStore } from '#storage';
import { describeStore } from './store.contract.ts';

describeStore('SQLite in memory', {
  open: () => createMemoryStore(createFixedClock('2026-03-04' as PlainDate)),
  readsDuringChanges: false,
});
