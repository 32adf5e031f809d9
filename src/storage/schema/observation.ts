import { describeTable, integer, text, textOrNull } from './column.ts';

export const observationTable = describeTable('observation', {
  id: text,
  course: text,
  student: textOrNull,
  lesson: textOrNull,
  skill: text,
  level: integer,
  date: text,
  note: text,
  take: textOrNull,
  notedAt: textOrNull,
});
