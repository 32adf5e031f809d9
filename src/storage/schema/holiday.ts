import { describeTable, text } from './column.ts';

export const holidayTable = describeTable('holiday', {
  id: text,
  name: text,
  starts: text,
  ends: text,
  source: text,
});
