import { describe, expect, it } from 'vitest';
import type { Id } from '#core';
import type { UnitDocument } from '#planning';
import { documentToDraft, draftToDocument } from './copy-draft.ts';

const activity = (key: string) => ({
  key,
  title: key,
  howTo: 'Play, then listen.',
  minutes: { shortest: 4, usual: 10, longest: 15 },
  develops: ['skill:steady' as Id<'skill'>],
  character: 'new' as const,
  variants: [],
  materials: [],
  bring: ['a drum'],
});
const unit: UnitDocument = {
  format: 'levare-unit/1',
  id: 'unit:one' as Id<'unit'>,
  version: 3,
  title: 'Long notes',
  area: 'technique',
  goal: 'hold a note',
  about: '',
  stages: ['beginner'],
  ages: { from: 7, to: 99 },
  families: [],
  skills: [],
  activities: [activity('breath'), activity('drone')],
  extensions: [],
  checks: [],
  next: [],
};

describe('adapting a copy', () => {
  it('changes nothing by itself', () => {
    expect(draftToDocument(unit, documentToDraft(unit))).toEqual({ ok: true, value: unit });
  });

  it('changes what was typed and keeps the rest', () => {
    const draft = documentToDraft(unit);
    const [breath, drone] = draft.activities;
    if (!breath || !drone) throw new Error('the unit has two activities');
    const made = draftToDocument(unit, {
      goal: 'hold a note for eight beats',
      activities: [
        { ...breath, usual: '12' },
        { ...drone, leftOut: true },
      ],
    });
    expect(made.ok && made.value.activities).toEqual([
      { ...activity('breath'), minutes: { shortest: 4, usual: 12, longest: 15 } },
    ]);
    expect(made.ok && made.value.goal).toBe('hold a note for eight beats');
  });

  it.each([
    [{ usual: '3' }, 'minutes'],
    [{ longest: '9' }, 'minutes'],
    [{ shortest: '0' }, 'minutes'],
    [{ usual: '' }, 'minutes'],
    [{ title: '  ' }, 'title'],
  ] as const)('refuses %j', (change, field) => {
    const draft = documentToDraft(unit);
    const made = draftToDocument(unit, {
      ...draft,
      activities: draft.activities.map((one, i) => (i === 0 ? { ...one, ...change } : one)),
    });
    expect(made).toEqual({ ok: false, error: [{ activity: 'breath', field }] });
  });

  it('refuses to leave out every activity', () => {
    const draft = documentToDraft(unit);
    const made = draftToDocument(unit, {
      ...draft,
      activities: draft.activities.map((one) => ({ ...one, leftOut: true })),
    });
    expect(made).toEqual({ ok: false, error: [{ activity: null, field: 'all' }] });
  });
});
