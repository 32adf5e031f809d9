import { describeTable, text } from './column.ts';

export const eventTable = describeTable('event', {
  id: text,
  course: text,
  date: text,
  title: text,
});
