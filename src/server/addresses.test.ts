import type { networkInterfaces } from 'node:os';
import { expect, test } from 'vitest';
import { addressesOf } from './addresses.ts';

const one = (address: string, family: 'IPv4' | 'IPv6', internal = false) =>
  ({ address, family, internal }) as NonNullable<ReturnType<typeof networkInterfaces>[string]>[number];
// Addresses for documentation: RFC 5737 and RFC 3849; fe80::/10 is of the link alone: RFC 4291, section 2.4.
const lan = [one('192.0.2.20', 'IPv4'), one('fe80::1', 'IPv6'), one('2001:db8::20', 'IPv6')];
const machine = { lo: [one('127.0.0.1', 'IPv4', true), one('::1', 'IPv6', true)], lan };

test('what is served on this machine alone is reached from nowhere else', () => {
  for (const host of ['127.0.0.1', 'localhost'])
    expect(addressesOf(host, 4380, machine)).toEqual({ here: `http://${host}:4380`, elsewhere: [] });
  expect(addressesOf('::1', 4380, machine)).toEqual({ here: 'http://[::1]:4380', elsewhere: [] });
});

test('what is served everywhere is told as addresses that can be opened', () => {
  for (const host of ['0.0.0.0', '::'])
    expect(addressesOf(host, 4380, machine)).toEqual({
      here: 'http://127.0.0.1:4380',
      elsewhere: ['http://192.0.2.20:4380'],
    });
  expect(addressesOf('::', 4380, { lan: lan.slice(1) }).elsewhere).toEqual(['http://[2001:db8::20]:4380']);
  expect(addressesOf('0.0.0.0', 4380, { lo: machine.lo }).elsewhere).toEqual([]);
});

test('one address alone is the one for this machine too', () => {
  const only = 'http://192.0.2.20:5000';
  expect(addressesOf('192.0.2.20', 5000, machine)).toEqual({ here: only, elsewhere: [only] });
});
