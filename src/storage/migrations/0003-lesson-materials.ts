// Sheets and backings kept on one lesson's practice sheet.

import { createIndex, createTable } from './create-table.ts';
import type { Migration } from './migration.ts';

export const lessonMaterials: Migration = {
  number: 3,
  name: 'lesson-materials',
  async apply(database, dialect) {
    await createTable(database, dialect, 'lesson_material', {
      id: 'text key',
      lesson: 'text references lesson',
      course: 'text references course',
      kept_at: 'text',
      title: 'text',
      spec: 'json',
      seed: 'integer',
    });
    await createIndex(database, 'lesson_material', ['lesson']);
    await createIndex(database, 'lesson_material', ['course']);
  },
};
