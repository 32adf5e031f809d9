import { expect, test } from 'vitest';
import { nearestStaying } from './nearest-staying.ts';

const all = () => true;

test('the next takes the place of what went, at the end the one before', () => {
  expect(nearestStaying(['a', 'b', 'c'], 'b', ['a', 'c'], all)).toBe('c');
  expect(nearestStaying(['a', 'b', 'c'], 'c', ['a', 'b'], all)).toBe('b');
  expect(nearestStaying(['a'], 'a', [], all)).toBeNull();
});

test('what has come to stand in the same place comes first', () => {
  expect(nearestStaying(['a', 'remove', 'c'], 'remove', ['a', 'restore', 'c'], all)).toBe('restore');
  expect(nearestStaying(['remove', 'c'], 'remove', ['restore', 'c', 'new'], all)).toBe('restore');
});

test('a whole row goes, and with it its neighbours', () => {
  const rows = ['change 1', 'remove 1', 'change 2', 'remove 2'];
  expect(nearestStaying(rows, 'remove 1', ['change 2', 'remove 2'], all)).toBe('change 2');
  expect(nearestStaying(rows, 'remove 2', ['change 1', 'remove 1'], all)).toBe('remove 1');
});

test('what does not fit is passed by', () => {
  expect(nearestStaying(['a', 'b', 'field', 'd'], 'b', ['a', 'field', 'd'], (one) => one !== 'field')).toBe(
    'd',
  );
});
