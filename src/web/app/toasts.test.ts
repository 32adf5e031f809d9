import { beforeEach, expect, test } from 'vitest';
import { dropToast, dropToasts, readToasts, showToast } from './toasts.ts';

const texts = () => readToasts().map((t) => t.text);

beforeEach(dropToasts);

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

test('a fault goes when the same is tried again and done, and only then', () => {
  showToast({ text: 'too long', fault: true, about: 'term.put' });
  showToast({ text: 'another thing done', about: 'student.add' });
  expect(texts()).toEqual(['too long', 'another thing done']);
  showToast({ text: 'backwards', fault: true, about: 'term.put' });
  expect(texts()).toEqual(['backwards']);
  showToast({ text: 'the term is set', about: 'term.put' });
  expect(texts()).toEqual(['the term is set']);
});

test('one is put away alone, or all at once', () => {
  showToast({ text: 'wrong', fault: true });
  showToast({ text: 'done' });
  dropToast(readToasts()[0]?.key ?? 0);
  expect(texts()).toEqual(['done']);
  showToast({ text: 'wrong', fault: true });
  dropToasts();
  expect(texts()).toEqual([]);
});
