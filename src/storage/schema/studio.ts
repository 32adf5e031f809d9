import { boolean, describeTable, integer, json, jsonOrNull, text } from './column.ts';

export const studioTable = describeTable('studio', {
  id: text,
  revision: integer,
  name: text,
  teacher: text,
  timeZone: text,
  locale: text,
  noteNames: text,
  paper: text,
  defaults: json,
  pace: jsonOrNull,
  demo: boolean,
});
