import { describeTable, integer, json, text } from './column.ts';

export const familyTable = describeTable('family', {
  id: text,
  revision: integer,
  name: text,
  contacts: json,
  note: text,
});
