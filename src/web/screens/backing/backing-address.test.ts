import { expect, test } from 'vitest';
import { backingAddress, readBackingAddress } from './backing-address.ts';

const read = (address: string) => readBackingAddress(address.split('?')[1] ?? '');

test('what an address says is read back', () => {
  const spec = { kind: 'backing', chart: '| Dm7 G7 | C |', tempo: 90 };
  expect(read(backingAddress(spec, 7))).toEqual({ fields: spec, seed: 7, reader: null, isWritten: false });
  const reader = { reader: 'trumpet_bb', isWritten: true } as const;
  expect(read(backingAddress(spec, 7, reader))).toEqual({ fields: spec, seed: 7, ...reader });
});

test.each(['', 'spec=%7B', 'spec=[1]&seed=-3', 'seed=x', 'for=kazoo&typed=no'])(
  'an address that says nothing is a new track: %s',
  (text) => {
    expect(readBackingAddress(text)).toEqual({ fields: {}, seed: 1, reader: null, isWritten: false });
  },
);
