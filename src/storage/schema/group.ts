import { describeTable, integer, json, text } from './column.ts';

export const groupTable = describeTable(
  'group',
  {
    id: text,
    revision: integer,
    name: text,
    members: json,
  },
  'player_group',
);
