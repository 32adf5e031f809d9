// `levare units check|markdown FILE…`: unit files judged or made readable outside the studio.

import {
  formatUnitFault,
  readUnitText,
  type Skill,
  type SkillId,
  type UnitId,
  unitToMarkdown,
} from '#planning';
import { readLibrary } from '#server';
import { readNamedFile } from './read-file.ts';
import { refuse } from './refuse.ts';

export async function units(words: readonly string[]): Promise<number> {
  const [verb, ...files] = words;
  if ((verb !== 'check' && verb !== 'markdown') || files.length === 0)
    return refuse('units', 'say `levare units check FILE…` or `levare units markdown FILE…`.');
  let faults = 0;
  let starter: Awaited<ReturnType<typeof starterNames>> | null = null;
  for (const file of files) {
    const text = await readNamedFile(file);
    if (!text.ok) {
      refuse('units', text.error);
      faults++;
      continue;
    }
    const unit = readUnitText(text.value, /\.ya?ml$/i.test(file) ? 'yaml' : 'json');
    if (!unit.ok) {
      for (const fault of unit.error) console.error(`${file}: ${formatUnitFault(fault)}`);
      faults++;
    } else if (verb === 'markdown') {
      starter ??= await starterNames();
      const skills = new Map([...starter.skills, ...unit.value.skills.map((s) => [s.id, s] as const)]);
      console.log(unitToMarkdown(unit.value.unit, skills, starter.titles));
    } else {
      console.log(
        `${file}: ${unit.value.unit.title}, ${unit.value.unit.activities.length} activities, nothing wrong`,
      );
    }
  }
  return faults === 0 ? 0 : 2;
}

/** What the library that ships with the program calls things: a file rarely brings its whole skill map along. */
async function starterNames(): Promise<{ skills: Map<SkillId, Skill>; titles: Map<UnitId, string> }> {
  const library = await readLibrary();
  if (!library.ok) return { skills: new Map(), titles: new Map() };
  return {
    skills: new Map(library.value.skills.map((skill) => [skill.id, skill])),
    titles: new Map(library.value.units.map(({ id, title }) => [id, title])),
  };
}
