import type { Reader } from '../record/store.ts';
import type { KnownStudent } from './find-siblings.ts';

/** The students here, with all contacts they are reached by: their own and their family's. */
export async function listKnownStudents(reader: Reader): Promise<readonly KnownStudent[]> {
  const contactsByFamily = new Map((await reader.list('family')).map((one) => [one.id, one.contacts]));
  return (await reader.list('student')).map(({ id, name, family, contacts }) => ({
    id,
    name,
    family,
    contacts: [...((family && contactsByFamily.get(family)) ?? []), ...contacts],
  }));
}
