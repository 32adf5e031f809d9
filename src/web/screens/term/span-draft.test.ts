import { expect, test } from 'vitest';
import { findSpanFaults, type SpanDraft } from './span-draft.ts';

const good: SpanDraft = { name: 'Autumn', starts: '2026-09-01', ends: '2026-12-18', endsOptional: false };

test.each<[string[], Partial<SpanDraft>]>([
  [[], {}],
  [['name'], { name: ' ' }],
  [['starts'], { starts: '2026-02-30' }],
  [['ends'], { ends: '' }],
  [[], { ends: '', endsOptional: true }],
  [['ends'], { ends: '2026-08-31' }],
])('%j', (fields, change) => {
  expect(Object.keys(findSpanFaults({ ...good, ...change }))).toEqual(fields);
});
