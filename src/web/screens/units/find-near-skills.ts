// Skills near to some words, where none has them all: so that a skill worded a little otherwise is found again and not
// written a second time. A word weighs the more, the fewer skills have it (inverse document frequency; K. Spärck Jones,
// "A statistical interpretation of term specificity", Journal of Documentation 28, 1972).

import type { Skill } from '#planning';

/** More would hide the way to a new skill. */
const mostNear = 5;
/** Share of the weight that the nearest has: with less, another is not near (tried on the starter library's 119 skills). */
const nearEnough = 0.5;
/** Share of the weight of all the words that any skill has: less is chance (tried likewise). */
const leastShare = 0.3;

const endings = /(?:ing|ly|ed|s)$/;
/** Shorter words (of, on, to) say nothing of what a skill is. */
const leastLetters = 3;

const wordsOf = (text: string): readonly string[] =>
  (
    text
      .normalize('NFD')
      .replace(/\p{M}/gu, '')
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu) ?? []
  ).filter((word) => word.length >= leastLetters);

const stemOf = (word: string): string => {
  const stem = word.replace(endings, '');
  return stem.length >= leastLetters ? stem : word;
};

/** `isKin('even', 'evenly')`, `isKin('quavers', 'quaver')` and `isKin('plays', 'playing')` → true */
function isKin(one: string, other: string): boolean {
  const [a, b] = [stemOf(one), stemOf(other)];
  return a === b || (a.length > 3 && b.startsWith(a)) || (b.length > 3 && a.startsWith(b));
}

/**
 * Skills whose titles have some of the words or their kin, at most five, the nearest first: how many of the words, and how
 * rare among all skills. None for a text without words of three letters.
 */
export function findNearSkills<S extends Skill>(skills: readonly S[], text: string): readonly S[] {
  const titles = skills.map((skill) => ({ skill, words: wordsOf(skill.title) }));
  const wanted = [...new Set(wordsOf(text))].map((word) => {
    const having = new Set(titles.filter((t) => t.words.some((own) => isKin(word, own))).map((t) => t.skill));
    return { having, weight: Math.log((skills.length + 1) / (having.size + 1)) };
  });
  const known = wanted.filter((word) => word.having.size > 0);
  const sum = known.reduce((total, word) => total + word.weight, 0);
  const scored = titles
    .map(({ skill, words }) => ({
      skill,
      words: words.length,
      score: known.reduce((total, word) => total + (word.having.has(skill) ? word.weight : 0), 0),
    }))
    // Of two that have as much, the one that says little else.
    .sort((a, b) => b.score - a.score || a.words - b.words);
  const best = scored[0]?.score ?? 0;
  return scored
    .filter(({ score }) => score > 0 && score >= best * nearEnough && score >= sum * leastShare)
    .slice(0, mostNear)
    .map(({ skill }) => skill);
}
