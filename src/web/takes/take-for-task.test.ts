import { describe, expect, test } from 'vitest';
import type { SkillId } from '#planning';
import { segmentOfTask } from './take-for-task.ts';

const skill = (title: string) => ({
  skill: `skill:${title}` as SkillId,
  title,
  level: null,
  here: null,
  wanted: 2 as const,
  lookFor: [],
  listenable: [],
});
const segments = [
  { kind: 'recap', title: 'Walk', skills: [] },
  { kind: 'work', title: 'Walk', skills: [] },
  { kind: 'work', title: 'Walk and clap', skills: [] },
  { kind: 'revisit', title: 'Revisit', skills: [skill('keeps a beat')] },
] as const;

describe('the part of a lesson that a line of practice is about', () => {
  test.each([
    ['Walk and clap: even, for eight steps.', 'Walk and clap'],
    ['Twice a day, WALK slowly', 'Walk'],
    ['Once a day: keeps a beat', 'Revisit'],
    ['Play what you like best', undefined],
    ['', undefined],
  ])('%s', (task, title) => {
    const found = segmentOfTask(task, segments);
    expect(found?.title).toBe(title);
    expect(found?.kind).not.toBe('recap');
  });
});
