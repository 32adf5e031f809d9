import { describeTable, text, textOrNull } from './column.ts';

export const consentTable = describeTable('consent', {
  id: text,
  student: text,
  givenBy: text,
  relation: text,
  givenOn: text,
  note: text,
  withdrawnOn: textOrNull,
});
