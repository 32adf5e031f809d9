import { expect, test } from 'vitest';
import { backingAddress, readBackingAddress } from './backing-address.ts';

test('what an address says is read back', () => {
  const spec = { kind: 'backing', chart: '| Dm7 G7 | C |', tempo: 90 };
  const address = backingAddress(spec, 7);
  expect(readBackingAddress(address.split('?')[1] ?? '')).toEqual({ fields: spec, seed: 7 });
});

test.each(['', 'spec=%7B', 'spec=[1]&seed=-3', 'seed=x'])(
  'an address that says nothing is a new track: %s',
  (text) => {
    expect(readBackingAddress(text)).toEqual({ fields: {}, seed: 1 });
  },
);
