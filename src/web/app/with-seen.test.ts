import { expect, test } from 'vitest';
import type { Command } from '#contract';
import type { Id } from '#core';
import { withSeen } from './with-seen.ts';

const course = 'course:a' as Id<'course'>;

test('brings a command up to what the step itself has done, and leaves others alone', () => {
  const change: Command = { type: 'course.change', seen: 9, course };
  const cancel: Command = { type: 'lesson.cancel', lesson: 'lesson:a' as Id<'lesson'>, reason: '' };
  expect(withSeen(change, new Map([[course, 11]]))).toEqual({ ...change, seen: 11 });
  expect(withSeen(change, new Map([['course:other', 11]]))).toEqual(change);
  expect(withSeen(cancel, new Map([[course, 11]]))).toEqual(cancel);
});
