import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { UnitRow } from '#contract';
import { type UnitId, validateUnit } from '#planning';
import { skillId, skills, skillsById, unit } from './draft.fixture.ts';
import { breakLines, drawSkills, walk } from './draw-skills.ts';
import { estimateLessons } from './estimate-lessons.ts';
import { filterUnits, groupByArea, readFilter } from './filter-units.ts';
import { findSkills } from './find-skills.ts';
import { dropDrafts, findDraft, keepDraft, type Shelf } from './keep-draft.ts';
import { placeFindings } from './place-findings.ts';
import { placeOfPointer, reorder } from './reorder.ts';
import { draftToSkill, findSkillFaults } from './skill-draft.ts';
import { titleToSlug, titleToUnitId, uniqueSlug } from './slug.ts';
import { stageSpan } from './stage-span.ts';
import { documentToDraft, newUnitDraft } from './unit-draft.ts';

describe('slugs', () => {
  it('come from titles', () => {
    expect(titleToSlug('Zwölf Töne – fünf Größen!', 'unit')).toBe('zwolf-tone-funf-grossen');
    expect(titleToSlug('The piper’s tune', 'unit')).toBe('the-pipers-tune');
    expect(titleToSlug('Гаммы', 'unit')).toBe('unit');
  });

  it('are always what the schema takes as a key, and unlike those that are taken', () => {
    const key = /^[a-z0-9]+(-[a-z0-9]+)*$/;
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 90 }), fc.nat(12), (title, twins) => {
        const taken = new Set<string>();
        for (let n = 0; n <= twins; n++) {
          const slug = uniqueSlug(titleToSlug(title, 'unit'), taken);
          expect(slug).toMatch(key);
          expect(slug.length).toBeLessThanOrEqual(60);
          expect(taken.has(slug)).toBe(false);
          taken.add(slug);
        }
      }),
    );
  });

  it('make ids of units', () => {
    expect(titleToUnitId('Two to a step', new Set(['unit:two-to-a-step']))).toBe('unit:two-to-a-step-2');
  });
});

describe('estimateLessons', () => {
  // Common practice, no source: of every lesson some eight minutes go to settling in, recap and setting practice.
  it('divides by what is left of a lesson and rounds up', () => {
    expect([0, 22, 23, 44, 90].map((minutes) => estimateLessons(minutes, 30))).toEqual([0, 1, 2, 2, 5]);
    expect([37, 38, 90].map((minutes) => estimateLessons(minutes, 45))).toEqual([1, 2, 3]);
  });
});

describe('reorder', () => {
  it('moves one and keeps the others in order', () => {
    expect(reorder(['a', 'b', 'c', 'd'], 0, 2)).toEqual(['b', 'c', 'a', 'd']);
    expect(reorder(['a', 'b', 'c'], 2, -5)).toEqual(['c', 'a', 'b']);
    expect(reorder(['a', 'b'], 7, 0)).toEqual(['a', 'b']);
  });

  it('is taken back by moving back', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.nat(), { minLength: 1, maxLength: 9 }),
        fc.nat(8),
        fc.nat(8),
        (list, a, b) => {
          const [from, to] = [a % list.length, b % list.length];
          expect(reorder(reorder(list, from, to), to, from)).toEqual(list);
        },
      ),
    );
  });

  it('puts a dragged row between the middles it is held between', () => {
    const middles = [20, 60, 100];
    expect([5, 70, 200].map((y) => placeOfPointer(middles, 0, y))).toEqual([0, 1, 2]);
    expect([5, 59, 61].map((y) => placeOfPointer(middles, 2, y))).toEqual([0, 1, 2]);
  });
});

function shelf(full = false): Shelf {
  const items = new Map<string, string>();
  return {
    get length() {
      return items.size;
    },
    key: (at) => [...items.keys()][at] ?? null,
    getItem: (key) => items.get(key) ?? null,
    setItem: (key, value) => {
      if (full) throw new Error('QuotaExceededError');
      items.set(key, value);
    },
    removeItem: (key) => void items.delete(key),
  };
}

describe('a kept draft', () => {
  const draft = documentToDraft(unit);

  it('is found again by its place, the newest of all versions', () => {
    const browser = shelf();
    keepDraft(browser, {
      place: unit.id,
      version: 2,
      at: '2026-11-25T10:00:00Z',
      draft: { ...draft, title: 'Old' },
    });
    keepDraft(browser, { place: unit.id, version: 3, at: '2026-11-25T11:00:00Z', draft });
    keepDraft(browser, { place: 'new', version: 0, at: '2026-11-25T12:00:00Z', draft: newUnitDraft });
    expect(findDraft(browser, unit.id)).toEqual({
      place: unit.id,
      version: 3,
      at: '2026-11-25T11:00:00Z',
      draft,
    });
    dropDrafts(browser, unit.id);
    expect(findDraft(browser, unit.id)).toBeNull();
    expect(findDraft(browser, 'new')?.draft).toEqual(newUnitDraft);
  });

  it('is not mixed up with a unit whose id begins the same', () => {
    const browser = shelf();
    keepDraft(browser, {
      place: `${unit.id}-2` as typeof unit.id,
      version: 1,
      at: '2026-11-25T10:00:00Z',
      draft,
    });
    expect(findDraft(browser, unit.id)).toBeNull();
  });

  it('is passed over when it cannot be read', () => {
    const browser = shelf();
    for (const text of ['', '{', 'null', '{"shape":"levare-unit-draft/1","at":"x","draft":{}}'])
      browser.setItem(`levare.unit-draft.${unit.id}.1`, text);
    expect(findDraft(browser, unit.id)).toBeNull();
  });

  it('kept by an earlier Levare listens for nothing yet', () => {
    const browser = shelf();
    keepDraft(browser, { place: 'new', version: 0, at: '2026-11-25T12:00:00Z', draft });
    const key = browser.key(0) ?? '';
    const isNewer = (name: string) => name === 'listenFor';
    const old = JSON.stringify(JSON.parse(browser.getItem(key) ?? ''), (name, value) =>
      isNewer(name) ? undefined : value,
    );
    browser.setItem(key, old);
    expect(findDraft(browser, 'new')?.draft.checks.map((check) => check.listenFor)).toEqual([[]]);
  });

  it('is said not to be kept where the browser keeps nothing', () => {
    expect(keepDraft(shelf(true), { place: 'new', version: 0, at: '', draft })).toBe(false);
  });
});

describe('placeFindings', () => {
  it('puts each finding where it can be mended', () => {
    const [walking, reading] = unit.activities;
    if (!walking || !reading) throw new Error('the fixture has two activities');
    const slips = {
      ...unit,
      activities: [reading, { ...walking, howTo: '', variants: [{}, {}] }],
      checks: [{ key: 'rests', skill: skillId('unknown'), level: 2, lookFor: 'x' }] as const,
      skills: [...unit.skills, skillId('elsewhere')],
      next: [unit.id],
    };
    const placed = placeFindings(validateUnit(slips, skillsById), slips, skillsById);
    expect([...placed.keys()].sort()).toEqual([
      'activity:read',
      'activity:walk',
      'check:rests',
      'next',
      'skills',
    ]);
    expect(placed.get('activity:walk')).toHaveLength(3);
    expect(placed.get('activity:read')?.[0]).toContain('Put “Walk and clap” first');
  });

  it('has nothing to say of a sound unit', () => {
    expect(placeFindings(validateUnit(unit, skillsById), unit, skillsById)).toEqual(new Map());
  });

  it('says at the lists when they are empty', () => {
    const empty = { ...unit, activities: [], checks: [], skills: [], next: [] };
    expect([...placeFindings(validateUnit(empty, skillsById), empty, skillsById).keys()]).toEqual([
      'activities',
      'checks',
    ]);
  });
});

describe('findSkills', () => {
  it('finds words wherever they stand, the title’s beginning first', () => {
    expect(findSkills(skills, 'beat').map((one) => one.id)).toEqual([
      skillId('beat'),
      skillId('reads-halves'),
    ]);
    expect(findSkills(skills, 'reads')[0]?.id).toBe(skillId('reads-halves'));
    expect(findSkills(skills, 'step twice').map((one) => one.id)).toEqual([skillId('halves')]);
    expect(findSkills(skills, 'rhythm')).toHaveLength(4);
    expect(findSkills(skills, 'violin')).toEqual([]);
  });
});

describe('a skill being written', () => {
  const known = skills[0] ?? null;

  it('gets an id of its own', () => {
    const draft = {
      title: 'Beat',
      area: 'rhythm',
      stage: 'beginner',
      description: '',
      restsOn: [],
      ongoing: false,
    } as const;
    expect(draftToSkill(draft, null, skills)).toMatchObject({ id: 'skill:beat-2', description: 'Beat' });
    expect(findSkillFaults(draft, null, skills)).toEqual({});
    expect(findSkillFaults({ ...draft, title: 'Plays AT ease' }, null, skills).title).toBeDefined();
  });

  it('names a ring, skill by skill', () => {
    if (!known) throw new Error('the fixture has skills');
    const faults = findSkillFaults({ ...known, restsOn: [skillId('reads-halves')] }, known, skills);
    expect(faults.restsOn).toContain('“reads two sounds to a beat” rests on “claps twice to each step”');
  });
});

describe('the drawing around a skill', () => {
  const drawing = drawSkills(skills, skillId('halves'));

  it('has what it rests on at the left and what rests on it at the right', () => {
    expect(drawing.nodes.map(({ id, column }) => [id, column])).toEqual([
      [skillId('halves'), 0],
      [skillId('beat'), -1],
      [skillId('reads-halves'), 1],
    ]);
    expect(drawing.links).toHaveLength(2);
  });

  it('is walked along its links, and no further than its edges', () => {
    expect(walk(drawing, skillId('halves'), 'left')).toBe(skillId('beat'));
    expect(walk(drawing, skillId('halves'), 'right')).toBe(skillId('reads-halves'));
    expect(walk(drawing, skillId('beat'), 'left')).toBeNull();
    expect(walk(drawing, skillId('beat'), 'up')).toBeNull();
  });

  it('breaks titles into lines', () => {
    expect(breakLines('reads two sounds to a beat')).toEqual(['reads two sounds to', 'a beat']);
    expect(breakLines('word '.repeat(40).trim())).toHaveLength(4);
  });
});

describe('the library narrowed down', () => {
  const row = (title: string, change: Partial<UnitRow>): UnitRow => ({
    id: `unit:${title}` as UnitId,
    version: 1,
    title,
    area: 'ear',
    goal: 'hear it',
    stages: ['beginner'],
    ages: { from: 6, to: 12 },
    usualMinutes: 40,
    activities: 4,
    usedBy: 0,
    retired: false,
    ...change,
  });
  const rows = [
    row('Écho', { stages: ['advanced'] }),
    row('Answer', { goal: 'sing an echo back' }),
    row('Scale', { area: 'technique', ages: { from: 10, to: 99 } }),
  ];
  const all = { area: '', stage: '', age: '', find: '' } as const;
  const titles = (filter: Partial<Parameters<typeof filterUnits>[1]>) =>
    filterUnits(rows, { ...all, ...filter }).map((one) => one.title);

  it('by words, area, stage and age', () => {
    expect(titles({ find: 'echo' })).toEqual(['Écho', 'Answer']);
    expect(titles({ area: 'technique' })).toEqual(['Scale']);
    expect(titles({ stage: 'advanced' })).toEqual(['Écho']);
    expect(titles({ age: '11' })).toEqual(['Écho', 'Answer', 'Scale']);
    expect(titles({ age: '40' })).toEqual(['Scale']);
    expect(titles({ age: 'x' })).toHaveLength(3);
  });

  it('stands by area, the easiest first', () => {
    expect(groupByArea(rows).map((group) => [group.area, group.units.map((one) => one.title)])).toEqual([
      ['technique', ['Scale']],
      ['ear', ['Answer', 'Écho']],
    ]);
  });

  it('takes from the address only what it knows', () => {
    expect(readFilter(new URLSearchParams('area=cooking&stage=advanced&find=a'))).toEqual({
      ...all,
      stage: 'advanced',
      find: 'a',
    });
  });
});

describe('stageSpan', () => {
  it('says neighbours as a span', () => {
    expect(stageSpan(['beginner'])).toBe('Beginner');
    expect(stageSpan(['elementary', 'beginner'])).toBe('Beginner to elementary');
    expect(stageSpan(['beginner', 'advanced'])).toBe('Beginner, advanced');
  });
});
