import { describe, expect, test } from 'vitest';
import { present } from '#core';
import type { SkillId } from '../skill/skill.ts';
import { applyVariant } from './apply-variant.ts';
import { compareUnits } from './compare-units.ts';
import { exampleFile, exampleSkillsById } from './example-unit.contract.ts';
import { formatUnitDifference } from './format-unit-difference.ts';
import { formatUnitFinding } from './format-unit-finding.ts';
import type { Activity, UnitDocument, UnitId } from './unit.ts';
import { unitToMarkdown } from './unit-to-markdown.ts';
import { validateUnit } from './validate-unit.ts';

const { unit } = exampleFile;
const walk = present(unit.activities[0], 'walk');
const play = present(unit.activities[1], 'play');
const beat = 'skill:beat' as SkillId;
const longShort = 'skill:long-short' as SkillId;

describe('validating a unit', () => {
  const check = present(unit.checks[0], 'a check');
  test.each<[string, Partial<UnitDocument>, string[]]>([
    ['as it is', {}, []],
    [
      'without activities',
      { activities: [], checks: [], skills: [] },
      [
        'The unit has no activities, so nothing of it can be planned. Add one.',
        'The unit has no checks, so it cannot be known when it is learnt. Add one for its main skill.',
      ],
    ],
    [
      'with a mistyped skill',
      { skills: [beat, longShort, 'skill:beet' as SkillId] },
      ['“skills” names skill:beet, which is not in the skill map. Did you mean skill:beat?'],
    ],
    [
      'with an unlisted skill',
      { skills: [longShort] },
      ["“Walk it” develops “keeps a beat”, which the unit does not list. Add it to the unit's skills."],
    ],
    [
      'with a skill nobody develops',
      { skills: [beat, longShort], activities: [walk], checks: [] },
      [
        'The unit lists “tells long from short”, but no activity develops it and none rests on it. Remove it or give it an activity.',
        'The unit has no checks, so it cannot be known when it is learnt. Add one for its main skill.',
      ],
    ],
    [
      'with a check of nothing taught',
      { skills: [beat], activities: [walk] },
      ['The check “hear” asks for “tells long from short”, which no activity develops.'],
    ],
    [
      'with a key twice',
      { extensions: [{ ...walk, title: 'Again' }] },
      ['The activity key walk is used twice. Rename one of the two.'],
    ],
    [
      'with a check key twice',
      { checks: [check, check] },
      ['The check key hear is used twice. Rename one of the two.'],
    ],
    [
      'with an extension for nothing',
      { extensions: [{ ...play, key: 'x', title: 'Jam', develops: [], howTo: '' }] },
      [
        'The extension “Jam” develops no skill, so its progress cannot be seen. Name at least one.',
        '“Jam” does not say how to teach it. Write a line or two.',
      ],
    ],
    [
      'in the wrong order',
      { activities: [play, walk] },
      [
        '“Play it” develops “tells long from short”, which rests on “keeps a beat”; that is first developed later, in “Walk it”. Put “Walk it” first.',
      ],
    ],
    [
      'followed by itself',
      { next: [unit.id] },
      ['The unit names itself as one that may follow. Remove it from next.'],
    ],
  ])('%s', (_, change, sentences) => {
    const found = validateUnit({ ...unit, ...change }, exampleSkillsById);
    expect(found.map((finding) => formatUnitFinding(finding, exampleSkillsById))).toEqual(sentences);
  });

  test('names variants that nobody gets', () => {
    const variants: Activity['variants'] = [
      { stages: ['advanced'], title: 'a' },
      { ages: { from: 3, to: 5 }, title: 'b' },
      { stages: ['beginner'] },
      { title: 'everyone' },
      { stages: ['elementary'], title: 'c' },
    ];
    const found = validateUnit({ ...unit, activities: [{ ...walk, variants }, play] }, exampleSkillsById);
    expect(
      found.map((finding) => (finding.kind === 'VariantUnreachable' ? finding.why : finding.kind)),
    ).toEqual(['stage', 'age', 'empty', 'earlier']);
    expect(formatUnitFinding(present(found[0], 'a finding'))).toBe(
      'Variant 1 of “Walk it” is never used: none of its stages is one of the unit’s.',
    );
  });
});

describe('the variant for a student', () => {
  test.each([
    ['beginner', 7, 'Walk it', 5],
    ['elementary', 7, 'Walk it', 5],
    ['elementary', 40, 'Walk it in your head', 8],
    ['elementary', null, 'Walk it in your head', 8],
    ['beginner', 9, 'Walk it', 8],
  ] as const)('%s, %s: %s in %i minutes', (stage, age, title, usual) => {
    const fitted = applyVariant(walk, { stage, age });
    expect([fitted.title, fitted.minutes.usual, fitted.howTo]).toEqual([title, usual, walk.howTo]);
    expect(applyVariant(fitted, { stage, age })).toEqual(fitted);
  });

  test('has materials of its own where it names any, and the activity’s where it does not', () => {
    const tune = { key: 'tune', title: 'A tune' };
    const small = { key: 'small', title: 'A smaller tune', spec: { kind: 'reading' } };
    const activity: Activity = {
      ...walk,
      materials: [tune],
      variants: [
        { ages: { from: 6, to: 9 }, materials: [small] },
        { stages: ['advanced'], materials: [] },
        { stages: ['elementary'], title: 'Walk on' },
      ],
    };
    const titles = (stage: 'beginner' | 'elementary' | 'advanced', age: number) =>
      applyVariant(activity, { stage, age }).materials.map((one) => one.title);
    expect(titles('beginner', 8)).toEqual(['A smaller tune']);
    expect(titles('advanced', 20)).toEqual([]);
    expect(titles('elementary', 20)).toEqual(['A tune']);
    const withOwn = { ...unit, activities: [activity, play] };
    expect(unitToMarkdown(withOwn, exampleSkillsById)).toContain('materials: A smaller tune');
    const stays = {
      ...withOwn,
      activities: [{ ...walk, materials: [{ ...tune, takeHome: 'never' }] }],
    } as const;
    expect(unitToMarkdown(stays, exampleSkillsById)).toContain('Materials: A tune (for the lesson alone)');
    const twice = { ...activity, variants: [{ materials: [small, small] }] };
    expect(
      validateUnit({ ...unit, activities: [twice, play] }, exampleSkillsById).map((one) =>
        formatUnitFinding(one),
      ),
    ).toEqual(['The material key small is used twice. Rename one of the two.']);
  });
});

describe('comparing units', () => {
  const jam: Activity = { ...play, key: 'jam', title: 'Jam' };
  test.each<[string, Partial<UnitDocument>, string[]]>([
    ['nothing', { version: 9 }, []],
    [
      'title and ages',
      { title: 'Short and long', ages: { from: 8, to: 99 } },
      ['The title changed from “Long and short” to “Short and long”.', 'The ages changed from 6–99 to 8–99.'],
    ],
    ['an activity more', { activities: [walk, jam, play] }, ['Activity added: “Jam”.']],
    ['one less', { activities: [walk] }, ['Activity removed: “Play it”.']],
    ['another order', { activities: [play, walk] }, ['“Walk it” moved from activity 1 to activity 2.']],
    [
      'made optional',
      { activities: [walk], extensions: [play] },
      ['“Play it” moved from activity 2 to extension 1.'],
    ],
    [
      'other minutes and text',
      { activities: [{ ...walk, minutes: { shortest: 5, usual: 9, longest: 12 }, howTo: 'a\nb' }, play] },
      ['“Walk it”: the how-to changed.', '“Walk it”: the minutes changed from 4–8–12 to 5–9–12.'],
    ],
    [
      'another level',
      { checks: [{ ...present(unit.checks[0], 'check'), level: 3 }] },
      ['Check “hear”: the level changed from 2 to 3.'],
    ],
    [
      'what a take shows',
      { checks: [{ ...present(unit.checks[0], 'check'), listenFor: [{ kind: 'motif', times: 2 }] }] },
      ['Check “hear”: what a take shows of it changed.'],
    ],
    ['no check', { checks: [], skills: [beat] }, ['Skill removed: “long short”.', 'Check removed: “hear”.']],
  ])('%s', (_, change, sentences) => {
    expect(compareUnits(unit, { ...unit, ...change }).map(formatUnitDifference)).toEqual(sentences);
  });

  test('one activity pulled to the front is one move', () => {
    const named = (key: string): Activity => ({ ...play, key, title: key });
    const before = { ...unit, activities: ['a', 'b', 'c', 'd', 'e'].map(named) };
    const after = { ...unit, activities: ['e', 'a', 'b', 'c', 'd'].map(named) };
    expect(compareUnits(before, after).map(formatUnitDifference)).toEqual([
      '“e” moved from activity 5 to activity 1.',
    ]);
  });
});

test('a unit prints as Markdown', () => {
  const text = unitToMarkdown(
    {
      ...unit,
      next: [unit.id, 'unit:other' as UnitId],
      extensions: [{ ...play, key: 'x', title: 'More *stars*' }],
      checks: [
        ...unit.checks,
        {
          key: 'steps',
          skill: beat,
          level: 3,
          lookFor: 'Steps on.',
          listenFor: [
            { kind: 'phraseLengths', atLeast: 3 },
            { kind: 'mostlyValue', value: 'quaver', share: 0.6, others: 1 },
          ],
        },
      ],
    },
    exampleSkillsById,
    new Map([[unit.id, 'Long and short']]),
  );
  expect(text).toBe(`# Long and short

*The student will be able to tell long from short and play both*

- Area: rhythm
- Suits: beginner, elementary; ages 6 and up; any instrument or voice
- Usual time: 16 minutes in 2 activities

## Skills

- keeps a beat
- tells long from short

## Activities

### 1. Walk it (8 min, 4 to 12)

- Develops: keeps a beat

Say the words and step.

> **For ages 6 to 8**: 5 min, 3 to 7

> **For elementary**: Walk it in your head

### 2. Play it (8 min, 4 to 12)

- Develops: tells long from short

One note.

## Extensions

For whoever is ready early.

### More \\*stars\\* (8 min, 4 to 12)

- Develops: tells long from short

One note.

## How one knows that it is learnt

- **tells long from short** (with help): Points to the right card.
- **keeps a beat** (alone): Steps on.
  A take shows it by: phrases of at least 3 lengths; mostly quavers (at least 60 % of the notes), with at least 1 other value for contrast.

## What may follow

- Long and short
- unit:other
`);
});
