import { describeTable, integer, json, text, textOrNull } from './column.ts';

export const courseUnitTable = describeTable('courseUnit', {
  id: text,
  course: text,
  unit: text,
  unitVersion: integer,
  document: json,
  strand: text,
  position: integer,
  notBefore: textOrNull,
  notAfter: textOrNull,
});
