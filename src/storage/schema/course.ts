import { describeTable, integer, json, jsonOrNull, text, textOrNull } from './column.ts';

export const courseTable = describeTable('course', {
  id: text,
  revision: integer,
  student: textOrNull,
  group: textOrNull,
  instrument: text,
  stage: text,
  strands: json,
  settings: json,
  moved: json,
  plan: jsonOrNull,
  ended: textOrNull,
});
