// Names of our own making: ids of units and skills, keys of activities, checks and materials, each from its title.

import type { SkillId, UnitId } from '#planning';

const longest = 60;

/** A title as lower-case words joined by hyphens, at most 60 characters; `otherwise` when nothing is left of it. `titleToSlug('Zwölf Töne!', 'unit')` → `zwolf-tone` */
export function titleToSlug(title: string, otherwise: string): string {
  const plain = title
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replaceAll('æ', 'ae')
    .replaceAll('œ', 'oe')
    .replaceAll('ø', 'o')
    .replaceAll('ł', 'l')
    .normalize('NFD')
    .replace(/[\p{M}'’]/gu, '');
  const words = plain.split(/[^a-z0-9]+/).filter((word) => word !== '');
  let slug = '';
  for (const word of words) {
    const next = slug === '' ? word.slice(0, longest) : `${slug}-${word}`;
    if (next.length > longest) break;
    slug = next;
  }
  return slug === '' ? otherwise : slug;
}

/** The slug itself, or with the first free number behind it. `uniqueSlug('scales', new Set(['scales']))` → `scales-2` */
export function uniqueSlug(slug: string, taken: ReadonlySet<string>): string {
  if (!taken.has(slug)) return slug;
  for (let n = 2; ; n++) {
    const tail = `-${n}`;
    const tried = slug.slice(0, longest - tail.length).replace(/-+$/, '') + tail;
    if (!taken.has(tried)) return tried;
  }
}

/** A unit's id from its title, unlike all that are taken. */
export function titleToUnitId(title: string, taken: ReadonlySet<string>): UnitId {
  const ids = new Set([...taken].map((id) => id.replace(/^unit:/, '')));
  return `unit:${uniqueSlug(titleToSlug(title, 'unit'), ids)}` as UnitId;
}

/** A skill's id from its title, unlike all that are taken. */
export function titleToSkillId(title: string, taken: ReadonlySet<string>): SkillId {
  const ids = new Set([...taken].map((id) => id.replace(/^skill:/, '')));
  return `skill:${uniqueSlug(titleToSlug(title, 'skill'), ids)}` as SkillId;
}
