import { describeTable, integer, text, textOrNull } from './column.ts';

export const soundTable = describeTable('sound', {
  id: text,
  type: text,
  bytes: integer,
  unheldSince: textOrNull,
});
