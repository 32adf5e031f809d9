import { describeTable, json, jsonOrNull, text, textOrNull } from './column.ts';

export const takeTable = describeTable('take', {
  id: text,
  student: text,
  date: text,
  keptAt: text,
  title: text,
  takenIn: textOrNull,
  playedFor: jsonOrNull,
  instrument: textOrNull,
  context: json,
  heard: json,
  evidence: json,
  note: text,
  sound: textOrNull,
  practiceOf: textOrNull,
});
