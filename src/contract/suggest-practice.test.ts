import { describe, expect, it } from 'vitest';
import { suggestPractice } from './suggest-practice.ts';

type Segment = Parameters<typeof suggestPractice>[0][number];
const segment = (
  practice: string | null,
  outcome: Segment['outcome'] = null,
  kind: Segment['kind'] = 'work',
): Segment => ({ practice, outcome, kind });

describe('suggested practice', () => {
  it('puts what is unfinished first and says nothing twice', () => {
    const segments = [
      segment(null, 'finished', 'settlingIn'),
      segment('Once a day: long notes', null, 'revisit'),
      segment('The long road', 'finished'),
      segment('Bursts', 'partly'),
      segment('Bursts', 'partly'),
    ];
    expect(suggestPractice(segments)).toBe('Bursts\nOnce a day: long notes\nThe long road');
  });
  it('leaves out what was not reached and what was set aside', () => {
    const segments = [
      segment('The long road', 'skipped'),
      segment('Bursts', 'setAside'),
      segment('Once a day: long notes', 'skipped', 'revisit'),
      segment('Close to home'),
    ];
    expect(suggestPractice(segments)).toBe('Close to home');
  });
});
