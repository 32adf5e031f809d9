// The unit that the teacher of the week writes. Its minutes are chosen so that the limits of one go are plain: up to ten
// minutes stay whole, more is split into goes between the shortest useful minutes and the longest for the age.

import type { WrittenActivity } from '../page-models/unit-editor-page.ts';

const breathing = 'breathes out before the first note';
const ringing = 'lets a note ring to its end';

export const ourUnit = {
  title: 'A note to its end',
  goal: 'begin a long note in good time, let it grow and fade, and end it on purpose',
  stages: ['beginner', 'elementary'],
  activities: [
    {
      title: 'Out before in',
      howTo: 'Breathe out, wait until the air wants to come, then play on it. **Four times**, one note each.',
      shortest: 4,
      usual: 8,
      longest: 12,
      skill: breathing,
    },
    {
      title: 'One long line',
      howTo: 'One note from nothing to nothing. Draw it in the air first, then play the drawing.',
      shortest: 6,
      usual: 24,
      longest: 30,
      skill: ringing,
    },
    {
      title: 'Three ways to end',
      howTo: 'Like a door, like a feather, like the light going out. Guess which it was.',
      shortest: 5,
      usual: 12,
      longest: 20,
      skill: ringing,
    },
  ] satisfies readonly WrittenActivity[],
  /** In the map already, and worked on in every lesson. */
  ongoing: 'listens for a ringing, centred sound',
  check: { skill: ringing, level: 2, lookFor: 'The end is as good as the beginning, and was meant.' },
} as const;
