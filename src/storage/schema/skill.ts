import { boolean, describeTable, json, text } from './column.ts';

export const skillTable = describeTable('skill', {
  id: text,
  title: text,
  area: text,
  stage: text,
  description: text,
  restsOn: json,
  ongoing: boolean,
});
