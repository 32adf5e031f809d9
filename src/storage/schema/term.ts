import { describeTable, text } from './column.ts';

export const termTable = describeTable('term', {
  id: text,
  name: text,
  starts: text,
  ends: text,
});
