// `levare units check|markdown FILE…`: unit files judged or made readable outside the studio.

import { formatUnitFault, readUnitText, unitToMarkdown } from '#planning';
import { readNamedFile } from './read-file.ts';

export async function units(words: readonly string[]): Promise<number> {
  const [verb, ...files] = words;
  if ((verb !== 'check' && verb !== 'markdown') || files.length === 0) {
    console.error('levare units: say `levare units check FILE…` or `levare units markdown FILE`.');
    return 2;
  }
  let faults = 0;
  for (const file of files) {
    const text = await readNamedFile(file);
    if (!text.ok) {
      console.error(`levare units: ${text.error}`);
      faults++;
      continue;
    }
    const unit = readUnitText(text.value, /\.ya?ml$/i.test(file) ? 'yaml' : 'json');
    if (!unit.ok) {
      for (const fault of unit.error) console.error(`${file}: ${formatUnitFault(fault)}`);
      faults++;
    } else if (verb === 'markdown') {
      console.log(unitToMarkdown(unit.value.unit, new Map(unit.value.skills.map((s) => [s.id, s]))));
    } else {
      console.log(
        `${file}: ${unit.value.unit.title}, ${unit.value.unit.activities.length} activities, nothing wrong`,
      );
    }
  }
  return faults === 0 ? 0 : 2;
}
