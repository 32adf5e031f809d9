import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CheckKind, checkableValues, checkFields } from '#listening';
import { compareUnits, parseUnitFile, type UnitId, validateUnit } from '#planning';
import { skillId, skillsById, unit } from './draft.fixture.ts';
import { draftToDocument, readWhole, usualMinutesOf } from './draft-to-document.ts';
import { findDraftFaults } from './find-draft-faults.ts';
import { draftToSpec, findListenFaults, newListenDraft, specToDraft } from './listen-draft.ts';
import {
  changeRow,
  documentToDraft,
  draftAsNew,
  emptyActivity,
  emptyCheck,
  emptyVariant,
  newUnitDraft,
  type UnitDraft,
} from './unit-draft.ts';

const id = 'unit:mine' as UnitId;

describe('a unit opened for writing', () => {
  it('comes back word for word when nothing was written', () => {
    expect(draftToDocument(documentToDraft(unit), unit.id)).toEqual(unit);
    expect(compareUnits(unit, draftToDocument(documentToDraft(unit), unit.id))).toEqual([]);
  });

  it('keeps the keys that were given, whatever the titles become', () => {
    const draft = documentToDraft(unit);
    const renamed = {
      ...draft,
      activities: draft.activities.map((one) => ({ ...one, title: 'Quite another' })),
    };
    expect(draftToDocument(renamed, id).activities.map((one) => one.key)).toEqual(['walk', 'read']);
  });

  it('gives new activities keys of their own', () => {
    const row = (handle: number, title: string) => ({ ...emptyActivity(handle), title });
    const draft: UnitDraft = {
      ...documentToDraft(unit),
      activities: [row(91, 'Walk'), ...documentToDraft(unit).activities, row(92, 'Walk')],
    };
    // `walk` is taken by an activity that has it already, though it stands later.
    expect(draftToDocument(draft, id).activities.map((one) => one.key)).toEqual([
      'walk-2',
      'walk',
      'read',
      'walk-3',
    ]);
  });

  it('lists every skill that an activity or a check names, so that no finding is about a skill not listed', () => {
    const draft = documentToDraft(unit);
    const written: UnitDraft = {
      ...draft,
      alsoSkills: [],
      skillOrder: [],
      checks: [...draft.checks, { ...emptyCheck(90, skillId('ease')), lookFor: 'Loose.' }],
    };
    const document = draftToDocument(written, id);
    expect(new Set(document.skills)).toEqual(new Set(unit.skills));
    expect(validateUnit(document, skillsById).filter((one) => one.kind === 'SkillNotListed')).toEqual([]);
  });

  it('begins a likeness without an id', () => {
    expect(draftAsNew(documentToDraft(unit), 'Other')).toMatchObject({
      id: null,
      version: 0,
      title: 'Other',
    });
  });

  it('adds the usual minutes of its activities, not of extensions', () => {
    const draft = documentToDraft(unit);
    expect(usualMinutesOf({ ...draft, extensions: draft.activities })).toBe(18);
    const broken = changeRow(draft.activities, draft.activities[0]?.handle ?? 0, {
      minutes: { shortest: '', usual: 'x', longest: '' },
    });
    expect(usualMinutesOf({ ...draft, activities: broken })).toBe(10);
  });
});

describe('what a check listens for', () => {
  it('is written in per cent where it is a share, and comes back as it was', () => {
    const spec = { kind: 'restShare', atLeast: 0.15, atMost: 0.29 } as const;
    const draft = specToDraft(spec, 1);
    expect(draft.texts).toEqual({ atLeast: '15', atMost: '29' });
    expect(draftToSpec(draft)).toEqual(spec);
    expect(draftToSpec({ ...draft, texts: { atLeast: '12,5', atMost: '33.3' } })).toEqual({
      kind: 'restShare',
      atLeast: 0.125,
      atMost: 0.333,
    });
  });

  it.each(Object.keys(checkFields) as CheckKind[])('%s begins with its usual values, at no fault', (kind) => {
    const draft = newListenDraft(1, kind);
    expect(findListenFaults(draft)).toEqual(new Map());
    expect(specToDraft(draftToSpec(draft), 1)).toEqual(draft);
  });

  it('says each fault at its field, in the numbers that were written', () => {
    const faults = (kind: CheckKind, texts: Readonly<Record<string, string>>) =>
      Object.fromEntries(findListenFaults({ handle: 1, kind, texts }));
    expect(faults('restShare', { atLeast: '101', atMost: 'x' })).toEqual({
      atLeast: 'A number from 0 to 100.',
      atMost: 'A number from 0 to 100.',
    });
    expect(faults('phraseLengths', { atLeast: '2.5' })).toEqual({ atLeast: 'A whole number from 1 to 20.' });
    expect(faults('swing', { from: '2', to: '1.5' })).toEqual({ to: 'The smaller of the two comes first.' });
  });
});

describe('readWhole', () => {
  it('takes whole numbers only', () => {
    expect([' 12 ', '007', '1.5', '', '-3', '1e3'].map(readWhole)).toEqual([12, 7, NaN, NaN, NaN, NaN]);
  });
});

describe('findDraftFaults', () => {
  it('asks a new unit for what it lacks', () => {
    expect([...findDraftFaults(newUnitDraft).keys()]).toEqual(['title', 'goal', 'stages']);
  });

  it('says a fault at the row where it is', () => {
    const draft: UnitDraft = {
      ...documentToDraft(unit),
      activities: [{ ...emptyActivity(50), minutes: { shortest: '9', usual: '8', longest: '12' } }],
      checks: [emptyCheck(51, null)],
    };
    expect(new Set(findDraftFaults(draft).keys())).toEqual(
      new Set(['50.title', '50.minutes', '51.skill', '51.lookFor']),
    );
  });

  // The unit's own schema is the outside authority here: whatever is written, the editor lets through what it takes, and
  // nothing else.
  it('lets through just what the published schema takes', () => {
    const number = fc.oneof(
      fc.integer({ min: 0, max: 130 }).map(String),
      fc.constantFrom('', ' ', '1.5', 'x', '-2', '5', '12', '12'),
    );
    const words = fc.oneof(
      fc.string({ maxLength: 8 }),
      fc.constantFrom(
        '',
        '  ',
        'Walk\u0007',
        'two\nlines',
        '\ud800',
        'a'.repeat(130),
        'b'.repeat(6001),
        'Good',
        'Good',
      ),
    );
    const minutes = fc.record({ shortest: number, usual: number, longest: number });
    const lines = fc.oneof(words, fc.constant('x\n'.repeat(21)), fc.constant('y'.repeat(161)));
    const stage = fc.subarray(['beginner', 'advanced'] as const);
    const variant = fc
      .record({
        stages: stage,
        ageFrom: number,
        ageTo: number,
        title: words,
        howTo: words,
        minutes,
        bring: fc.option(lines),
        materials: fc.option(fc.array(words, { maxLength: 2 })),
      })
      .map((fields) => ({
        ...emptyVariant(0),
        ...fields,
        materials: fields.materials?.map((title) => ({ handle: 0, key: null, title })) ?? null,
      }));
    const activity = fc
      .record({
        title: words,
        howTo: words,
        minutes,
        bring: lines,
        develops: fc.constantFrom(
          [],
          [skillId('beat')],
          Array.from({ length: 13 }, (_, n) => skillId(`s${n}`)),
        ),
        variants: fc.array(variant, { maxLength: 1 }),
        materials: fc.array(words, { maxLength: 2 }),
      })
      .map((fields) => ({ ...emptyActivity(0), ...fields }));
    const figure = fc.oneof(
      { arbitrary: number, weight: 1 },
      { arbitrary: fc.constantFrom('1', '3', '20', '50', '0.5', '1,5', '100.5', '7.25'), weight: 2 },
    );
    const spec = fc
      .constantFrom(...(Object.keys(checkFields) as CheckKind[]))
      .chain((kind) =>
        fc
          .record(
            Object.fromEntries(
              checkFields[kind].map(({ name, type }) => [
                name,
                type === 'value' ? fc.constantFrom(...checkableValues) : figure,
              ]),
            ),
          )
          .map((texts) => ({ handle: 0, kind, texts })),
      );
    const check = fc
      .record({
        skill: fc.constantFrom(skillId('beat'), skillId('a--b')),
        lookFor: words,
        listenFor: fc.array(spec, { maxLength: 2 }),
      })
      .map((fields) => ({ ...emptyCheck(0, null), ...fields }));
    const drafts = fc
      .record({
        title: words,
        goal: words,
        about: words,
        stages: stage,
        ageFrom: number,
        ageTo: number,
        activities: fc.array(activity, { maxLength: 2 }),
        checks: fc.array(check, { maxLength: 2 }),
      })
      .map((fields): UnitDraft => {
        let last = 0;
        return {
          ...newUnitDraft,
          ...fields,
          activities: fields.activities.map((one) => ({
            ...one,
            handle: ++last,
            variants: one.variants.map((row) => ({
              ...row,
              handle: ++last,
              materials: row.materials?.map((material) => ({ ...material, handle: ++last })) ?? null,
            })),
            materials: one.materials.map((title) => ({ handle: ++last, key: null, title })),
          })),
          checks: fields.checks.map((one) => ({
            ...one,
            handle: ++last,
            listenFor: one.listenFor.map((row) => ({ ...row, handle: ++last })),
          })),
        };
      });
    let taken = 0;
    fc.assert(
      fc.property(drafts, (draft) => {
        const faults = findDraftFaults(draft);
        const read = parseUnitFile({ unit: draftToDocument(draft, id) });
        if (read.ok) taken++;
        expect(faults.size === 0).toBe(read.ok);
        if (read.ok) expect(read.value.unit).toEqual(draftToDocument(draft, id));
      }),
      { numRuns: 4000 },
    );
    // The law would be empty if everything were refused; about thirty are taken.
    expect(taken).toBeGreaterThan(5);
  });
});
