import { describeTable, integer, json, text } from './column.ts';

export const lessonMaterialTable = describeTable('lessonMaterial', {
  id: text,
  lesson: text,
  course: text,
  keptAt: text,
  title: text,
  spec: json,
  seed: integer,
});
