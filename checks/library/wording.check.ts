import { describe, expect, test } from 'vitest';
import { parseMaterialSpec } from '#music';
import type { UnitDocument } from '#planning';
import { starterSkills, starterUnits } from './starter-library.ts';

const howTos = (unit: UnitDocument) => [...unit.activities, ...unit.extensions].map((one) => one.howTo);
const variantTexts = (unit: UnitDocument) =>
  [...unit.activities, ...unit.extensions].flatMap((one) =>
    one.variants.flatMap((variant) => variant.howTo ?? []),
  );
const allTexts = (unit: UnitDocument) => [
  unit.title,
  unit.goal,
  unit.about,
  ...howTos(unit),
  ...variantTexts(unit),
  ...unit.checks.map((check) => check.lookFor),
];

describe.each(starterUnits)('the wording of $name', ({ text, unit }) => {
  test('is full enough to teach from', () => {
    const texts = howTos(unit);
    const average = texts.reduce((sum, one) => sum + one.length, 0) / texts.length;
    expect(average).toBeGreaterThanOrEqual(350);
    for (const one of [...texts, ...variantTexts(unit)]) expect(one.length).toBeGreaterThanOrEqual(250);
    for (const check of unit.checks) expect(check.lookFor.length).toBeGreaterThanOrEqual(60);
    expect(unit.about.length).toBeGreaterThanOrEqual(300);
  });

  test('says in every activity what goes wrong and what to do then', () => {
    for (const one of unit.activities) expect(one.howTo, one.key).toMatch(/\*\*If /);
    for (const one of unit.activities)
      expect(/\*\*Harder:\*\*|\*\*Easier:\*\*/.test(one.howTo) || one.howTo.includes('**If '), one.key).toBe(
        true,
      );
  });

  test('gives something to practise at home after every activity, as the last paragraph', () => {
    for (const one of unit.activities) {
      expect(one.howTo.split('\n\n').at(-1), one.key).toMatch(/^\*\*At home:\*\* \p{Lu}/u);
      for (const variant of one.variants)
        if (variant.howTo !== undefined)
          expect(variant.howTo.split('\n\n').at(-1), one.key).toMatch(/^\*\*At home:\*\* \p{Lu}/u);
    }
  });

  // Flesch 1948 (formula from memory): 60–70 is plain English. Syllables by rule of thumb, hence the wide band.
  test('reads easily', () => {
    const ease = readingEase(allTexts(unit).join('\n'));
    expect(ease).toBeGreaterThan(60);
    expect(ease).toBeLessThan(100);
  });

  test('keeps to our words and to British terms', () => {
    expect(text.match(forbidden)?.[0]).toBeUndefined();
  });

  // The line as it would be printed: balanced marks, no stray spaces, no straight dashes for thoughts.
  test('is typed cleanly', () => {
    for (const one of allTexts(unit)) {
      expect(one.match(/\*\*/g)?.length ?? 0, one).toSatisfy((count: number) => count % 2 === 0);
      expect(one).not.toMatch(/ {2}| [,.;:!?]|\.\.\.|--/);
      expect(one.match(/"/g)?.length ?? 0, one).toSatisfy((count: number) => count % 2 === 0);
    }
  });
});

// Words of brands and method schools, of school administration, and American note names where the house style is British.
const forbidden =
  /suzuki|kod[aá]ly|dalcroze|\borff\b|audiation|abrsm|trinity|rockschool|aebersold|eurhythmics|solf[eè]ge|learning outcome|differentiat|scaffold|learners?\b|pupils?\b|dorian|modal|\b(?:quarter|eighth|half|whole|sixteenth)[- ]notes?\b|\bmeasures?\b|\bcolor|TODO|lorem/i;

describe('the skill map’s wording', () => {
  test.each(starterSkills)('$id is said in a line and described', ({ title, description }) => {
    expect(title.length).toBeLessThanOrEqual(80);
    expect(title[0]).toBe(title[0]?.toLowerCase());
    expect(description.length).toBeGreaterThanOrEqual(25);
    expect(`${title} ${description}`.match(forbidden)?.[0]).toBeUndefined();
  });
});

// Tunes that the texts name, with the reason why anyone may play them (from memory).
const freeTunes: Readonly<Record<string, string>> = {
  'Frère Jacques': 'traditional, French, 18th century',
  'London Bridge': 'traditional, English',
  "Lavender's Blue": 'traditional, English, 17th century',
  'Au clair de la lune': 'traditional, French, 18th century',
  'Hot Cross Buns': 'traditional, English',
  'Jingle Bells': 'James Pierpont, printed 1857; died 1893',
  'Skip to My Lou': 'traditional, American, 19th century',
  'Ode to Joy': 'Beethoven, died 1827',
  'Auld Lang Syne': 'traditional, Scottish; words Burns, died 1796',
  'The Water is Wide': 'traditional, British; the tune in print since 1906 or before',
  'When the Saints': 'traditional, American, 19th century',
  'Little Hans': 'Hänschen klein: traditional, German, 18th century',
  'From the New World': 'Dvořák, 1893; died 1904',
  'Low Tide': 'our own',
  'The Ferry Goes Home': 'our own',
  'Eight questions': 'our own',
  'There and back': 'our own',
  'Two endings': 'our own',
  'Tune 1': 'Hot Cross Buns, see above',
  'Tune 2': 'Mary Had a Little Lamb: Lowell Mason, died 1872',
  'Tune 3': 'Au clair de la lune, see above',
};

test('every tune named in quotation marks with capitals is free to play', () => {
  const named = starterUnits
    .flatMap(({ unit }) => allTexts(unit))
    .flatMap((text) => [
      ...text.matchAll(/"((?:[A-ZÀ-Ý][\p{L}']*)(?: (?:[A-ZÀ-Ý]|is|to|clair|de|la|lune)[\p{L}']*)+)"/gu),
    ])
    .map((found) => found[1] ?? '');
  expect(named.length).toBeGreaterThanOrEqual(5);
  expect(named.filter((name) => freeTunes[name] === undefined)).toEqual([]);
});

test('every written tune that a material brings is free to play', () => {
  const specs = starterUnits
    .flatMap(({ unit }) => [...unit.activities, ...unit.extensions])
    .flatMap((activity) => [
      ...activity.materials,
      ...activity.variants.flatMap((variant) => variant.materials ?? []),
    ])
    .flatMap(({ spec, title }) => {
      const read = parseMaterialSpec(spec);
      return read.ok && read.value.kind === 'chart' && read.value.melody !== null
        ? [read.value.title ?? title]
        : [];
    });
  const tunes = [...new Set(specs.map((title) => title.replace(', second part', '')))];
  expect(tunes.length).toBeGreaterThanOrEqual(10);
  expect(tunes.filter((title) => freeTunes[title] === undefined)).toEqual([]);
});

function readingEase(text: string): number {
  const plain = text.replaceAll('**', '').replace(/[\p{Emoji_Presentation}]/gu, '');
  const sentences = plain.split(/[.!?:;](?:\s|$|")/).filter((one) => /\p{L}/u.test(one)).length;
  const words = plain.match(/[\p{L}']+/gu) ?? [];
  const syllables = words.reduce((sum, word) => sum + countSyllables(word.toLowerCase()), 0);
  return 206.835 - 1.015 * (words.length / sentences) - 84.6 * (syllables / words.length);
}

function countSyllables(word: string): number {
  const groups = word
    .replace(/(?:[^laeiouy]es|[^td]ed|[^l]e)$/, (end) => end[0] ?? '')
    .match(/[aeiouyà-ÿ]+/g);
  return Math.max(1, groups?.length ?? 0);
}
