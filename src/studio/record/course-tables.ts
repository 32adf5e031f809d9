import type { TableName } from './records.ts';

/** Tables whose rows hang on a course, those first that hang on others of them. */
export const courseTables = [
  'segment',
  'lessonMaterial',
  'observation',
  'setAside',
  'lesson',
  'event',
  'slot',
  'courseUnit',
] as const satisfies readonly TableName[];
