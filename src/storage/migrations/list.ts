// Every migration, by hand and in order. Released ones are never edited, renumbered or removed.

import { firstTables } from './0001-first-tables.ts';
import { takes } from './0002-takes.ts';
import { lessonMaterials } from './0003-lesson-materials.ts';
import { practiceTakes } from './0004-practice-takes.ts';
import { absences } from './0005-absences.ts';
import type { Migration } from './migration.ts';

export const migrations: readonly Migration[] = [
  firstTables,
  takes,
  lessonMaterials,
  practiceTakes,
  absences,
];
