import { describeTable, integer, json, text } from './column.ts';

export const unitVersionTable = describeTable('unitVersion', {
  id: text,
  unit: text,
  version: integer,
  document: json,
  savedAt: text,
});
