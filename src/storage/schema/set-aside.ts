import { describeTable, text, textOrNull } from './column.ts';

export const setAsideTable = describeTable('setAside', {
  id: text,
  course: text,
  courseUnit: text,
  activity: text,
  since: text,
  backFrom: textOrNull,
});
