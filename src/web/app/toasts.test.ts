import { beforeEach, expect, test } from 'vitest';
import { dropToast, readToasts, showToast } from './toasts.ts';

const texts = () => readToasts().map((t) => t.text);

beforeEach(() => {
  for (const { key } of readToasts()) dropToast(key);
});

test('a message takes the place of the last; a fault stays beside it', () => {
  showToast({ text: 'one' });
  showToast({ text: 'wrong', fault: true });
  showToast({ text: 'two' });
  expect(texts()).toEqual(['wrong', 'two']);
});

test('the same fault is said once, and at most two faults stand', () => {
  for (const text of ['a', 'b', 'b', 'c']) showToast({ text, fault: true });
  expect(texts()).toEqual(['b', 'c']);
});
