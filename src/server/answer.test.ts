import { expect, test } from 'vitest';
import { sendSchema } from '#contract';
import { faultOfIssues } from './answer.ts';

const found = { type: 'studio.found', timeZone: 'UTC', locale: 'en-GB', starterUnits: false };

test('what is too long is refused in words that a teacher can act on, each thing once', () => {
  const id = 'change:0123456789abcdef';
  const long = 'x'.repeat(121);
  const one = sendSchema.safeParse({ id, command: { ...found, name: long, teacher: '' } });
  expect(one.error && faultOfIssues(one.error)).toEqual({
    kind: 'Invalid',
    message: 'Nothing was kept. The name must be 120 characters or fewer.',
    field: 'command.name',
  });
  const two = sendSchema.safeParse({ id, command: { ...found, name: long, teacher: long } });
  const fault = two.error && faultOfIssues(two.error);
  expect(fault?.message).toContain('The name must be');
  expect(fault?.details).toHaveLength(1);
  expect(fault?.details?.[0]).toMatch(/^The teacher: /);
});
