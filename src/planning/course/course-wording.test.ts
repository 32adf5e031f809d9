import { expect, test } from 'vitest';
import type { PlainDate } from '#core';
import type { LeftOut, Move, Reason } from './course-plan.ts';
import { formatCycle, formatLeftOut, formatMove, formatNotReady, formatReason } from './course-wording.ts';
import { skillId } from './example-course.contract.ts';

const may = (day: number) => `2026-05-${String(day).padStart(2, '0')}` as PlainDate;

test('reasons as sentences', () => {
  const rows: readonly (readonly [Reason, string])[] = [
    [
      { kind: 'restsOn', activity: 'a', courseUnit: 'u', title: 'Echo clapping' },
      'Rests on “Echo clapping”.',
    ],
    [{ kind: 'nextInOrder' }, 'Next in order on its strand.'],
    [{ kind: 'split', minutes: 12, upTo: 12, of: 20 }, 'Split: 12 of 20 minutes fit here.'],
    [{ kind: 'split', minutes: 8, upTo: 20, of: 20 }, 'Split: 8 minutes more, up to 20 of 20.'],
    [
      { kind: 'due', recall: 0.78, lastSeen: may(4) },
      'Due for a revisit: predicted recall 78%, last seen 4 May.',
    ],
    [{ kind: 'due', recall: 0.8, lastSeen: null }, 'Due for a revisit by then: predicted recall 80%.'],
    [{ kind: 'rested', lessons: 1 }, 'Back after resting for 1 lesson.'],
    [{ kind: 'knownAlready', level: 3 }, 'Only a short check: its skills were seen alone.'],
    [
      { kind: 'pace', percent: 130, observations: 2 },
      'Minutes follow this student’s own pace: 130% of the usual, from 2 pieces of logged work.',
    ],
    [{ kind: 'deadline', date: may(12) }, 'To be ready by 12 May.'],
  ];
  for (const [reason, sentence] of rows) expect(formatReason(reason)).toBe(sentence);
});

test('moves as sentences', () => {
  const move = (rest: Partial<Move>): string =>
    formatMove({
      key: 'k',
      title: 'Blues scale',
      from: { date: may(12), minutes: 10 },
      to: { date: may(19), minutes: 10 },
      because: { kind: 'madeRoom' },
      ...rest,
    });
  expect(move({ because: { kind: 'lessonGone', date: may(12) } })).toBe(
    '“Blues scale” moved from 12 May to 19 May: no lesson on 12 May.',
  );
  expect(move({ because: { kind: 'lessonGone', date: may(14) } })).toBe(
    '“Blues scale” moved from 12 May to 19 May: in between it stood on 14 May, and there is no lesson then.',
  );
  expect(move({})).toBe('“Blues scale” moved from 12 May to 19 May: to make room for what else moved.');
  expect(move({ to: { date: may(5), minutes: 10 } })).toBe(
    '“Blues scale” moved from 12 May to 5 May: time came free.',
  );
  expect(move({ to: { date: may(12), minutes: 1 }, because: { kind: 'fasterThanPlanned' } })).toBe(
    '“Blues scale” on 12 May takes 1 minute instead of 10: it went faster than planned.',
  );
  expect(move({ from: null })).toBe('“Blues scale” is new on 19 May, 10 minutes: there is room for it now.');
  expect(move({ to: null, because: { kind: 'knownAlready' } })).toBe(
    '“Blues scale” on 12 May falls away: its skills are there already.',
  );
});

test('what is left out, not ready or in a ring', () => {
  const left = (why: LeftOut['why']) =>
    formatLeftOut({ courseUnit: 'u', activity: 'a', title: 'Round', minutes: 34, why });
  expect(left({ kind: 'noRoomBefore', date: may(12) })).toBe(
    '“Round” is left out, 34 minutes short: no room before 12 May.',
  );
  expect(left({ kind: 'afterLeftOut', title: 'Canon' })).toContain('comes after “Canon”');
  const skillTitle = (id: string) => id.slice(6);
  const entry = {
    courseUnit: 'u',
    activity: 'a',
    title: 'Round',
    missing: ['x', 'y', 'z'].map(skillId),
    way: [],
  };
  expect(formatNotReady(entry, { skillTitle })).toBe(
    '“Round” has to wait: it rests on “x”, “y” and “z”, which no unit in the library teaches.',
  );
  expect(formatCycle({ kind: 'SkillCycle', skills: ['x', 'y'].map(skillId) }, { skillTitle })).toBe(
    'These skills rest on one another in a ring: “x” and “y”. Take off one of the links.',
  );
});
