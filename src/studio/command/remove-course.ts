// Takes a course out with everything that hangs on it, children first, each row journalled.

import { courseTables } from '../record/course-tables.ts';
import type { CourseId } from '../record/records.ts';
import type { Transactor } from '../record/store.ts';

export async function removeCourse(tx: Transactor, course: CourseId): Promise<void> {
  const where = { course };
  for (const table of courseTables)
    for (const row of await tx.list(table, { where })) await tx.remove(table, row.id);
  await tx.remove('course', course);
}
