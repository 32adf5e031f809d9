// TEMPORARY until the editor is there.
import type { Page } from 'playwright-core';
import { sendCommand } from '../harness/api.ts';

const activities = [
  {
    title: 'Out before in',
    howTo: 'Breathe out first, wait, let the air come.',
    shortest: 4,
    usual: 8,
    longest: 12,
  },
  {
    title: 'One long line',
    howTo: 'One note, one breath or bow, from nothing to nothing.',
    shortest: 6,
    usual: 24,
    longest: 30,
  },
  { title: 'Three ways to begin', howTo: 'Say it, sing it, play it.', shortest: 5, usual: 12, longest: 20 },
];
export const ourUnit = {
  title: 'A note to its end',
  activities,
  async write(page: Page) {
    await sendCommand(page, {
      type: 'skill.put',
      skill: {
        id: 'skill:rings-out' as never,
        title: 'lets a note ring to its end',
        area: 'technique',
        stage: 'beginner',
        description: '',
        restsOn: [],
        ongoing: false,
      },
    });
    await sendCommand(page, {
      type: 'unit.save',
      seenVersion: 0,
      document: {
        format: 'levare-unit/1',
        id: 'unit:a-note-to-its-end',
        version: 1,
        title: 'A note to its end',
        area: 'technique',
        goal: 'let a long note grow, fade and end on purpose',
        about: '',
        stages: ['beginner', 'elementary', 'intermediate'],
        ages: { from: 7, to: 99 },
        families: [],
        skills: ['skill:rings-out'],
        activities: activities.map(({ title, howTo, shortest, usual, longest }, i) => ({
          key: `a${i}`,
          title,
          howTo,
          minutes: { shortest, usual, longest },
          develops: ['skill:rings-out'],
          character: 'new',
          variants: [],
          materials: [],
          bring: [],
        })),
        extensions: [],
        checks: [
          { key: 'c', skill: 'skill:rings-out', level: 2, lookFor: 'The end is as good as the start.' },
        ],
        next: [],
      } as never,
    });
  },
};
