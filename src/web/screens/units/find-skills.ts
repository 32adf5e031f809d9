// Skills found by words, wherever the words stand in their title, area or description.

import type { Skill } from '#planning';
import { areaNames } from '../../words/student.ts';

const plain = (text: string) => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** Those that have every word; titles that begin with the text come first, then titles with all words, then the rest. */
export function findSkills<S extends Skill>(skills: readonly S[], text: string): readonly S[] {
  const whole = plain(text).trim();
  const wanted = whole.split(/\s+/).filter((word) => word !== '');
  if (wanted.length === 0) return skills;
  const rank = (skill: S): number => {
    const title = plain(skill.title);
    if (title.startsWith(whole)) return 0;
    if (wanted.every((word) => title.includes(word))) return 1;
    const all = `${title} ${plain(areaNames[skill.area])} ${plain(skill.description)}`;
    return wanted.every((word) => all.includes(word)) ? 2 : 3;
  };
  return skills
    .map((skill) => ({ skill, rank: rank(skill) }))
    .filter((one) => one.rank < 3)
    .sort((a, b) => a.rank - b.rank)
    .map((one) => one.skill);
}
