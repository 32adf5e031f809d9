// Reads the starter units and the skill map that ship with the program.

import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { err, ok, type Result } from '#core';
import { formatUnitFault, readSkillMapText, readUnitText, type UnitDocument } from '#planning';
import type { StarterLibrary } from '#studio';

export type LibraryFault = { readonly kind: 'LibraryFault'; readonly message: string };

const shipped = join(import.meta.dirname, '..', '..', '..', 'library');

/** The library in `folder`, the one that ships unless another is named: `skills.yaml` and `units/*.yaml`. */
export async function readLibrary(folder = shipped): Promise<Result<StarterLibrary, LibraryFault>> {
  const skills = readSkillMapText(await readFile(join(folder, 'skills.yaml'), 'utf8'), 'yaml');
  if (!skills.ok) return err(fault('skills.yaml', skills.error.map(formatUnitFault)));
  const units: UnitDocument[] = [];
  const files = (await readdir(join(folder, 'units'))).filter((f) => f.endsWith('.yaml')).sort();
  for (const file of files) {
    const read = readUnitText(await readFile(join(folder, 'units', file), 'utf8'), 'yaml');
    if (!read.ok) return err(fault(file, read.error.map(formatUnitFault)));
    units.push(read.value.unit);
  }
  return ok({ skills: skills.value, units });
}

const fault = (file: string, sentences: readonly string[]): LibraryFault => ({
  kind: 'LibraryFault',
  message: `The starter library's ${file} cannot be read: ${sentences.join(' ')}`,
});
