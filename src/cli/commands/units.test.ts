import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { units } from './units.ts';

test('a starter unit is printed with the titles of its skills and of the units that follow', async () => {
  const said = vi.spyOn(console, 'log').mockImplementation(() => undefined);
  const file = join(import.meta.dirname, '../../../library/units/five-good-notes.yaml');
  expect(await units(['markdown', file])).toBe(0);
  const page = said.mock.calls.flat().join('\n');
  said.mockRestore();
  expect(page).toContain('- Develops: makes a clear sound at will');
  expect(page).toContain('- Fast and easy');
  expect(page).not.toMatch(/\b(?:skill|unit):/);
});
