import { boolean, describeTable, integer, json, jsonOrNull, real, text, textOrNull } from './column.ts';

export const lessonTable = describeTable('lesson', {
  id: text,
  course: text,
  date: text,
  time: text,
  minutes: integer,
  status: text,
  reason: text,
  slot: textOrNull,
  slotDate: textOrNull,
  barred: boolean,
  note: text,
  practice: text,
  overrun: real,
  ongoing: json,
  absent: jsonOrNull,
});
