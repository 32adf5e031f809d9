import { boolean, describeTable, integer, json, text } from './column.ts';

export const unitTable = describeTable('unit', {
  id: text,
  version: integer,
  title: text,
  area: text,
  document: json,
  retired: boolean,
});
