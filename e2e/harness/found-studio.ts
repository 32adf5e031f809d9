// A studio with the starter units and a term of fourteen weeks from today, founded past the screens.

import type { Page } from 'playwright-core';
import { addDays, createId, type PlainDate } from '#core';
import { readStudio, sendCommand } from './api.ts';

/** Founds the studio of the page and returns its today. */
export async function foundStudio(page: Page, name: string): Promise<PlainDate> {
  await sendCommand(page, {
    type: 'studio.found',
    name,
    teacher: 'Mara Lindqvist',
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    locale: 'en-GB',
    starterUnits: true,
  });
  const { today } = await readStudio(page);
  await sendCommand(page, {
    type: 'term.put',
    term: {
      id: createId('term', { next: Math.random }),
      name: 'Winter',
      starts: today,
      ends: addDays(today, 98),
    },
  });
  return today;
}
