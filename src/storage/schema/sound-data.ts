import { describeTable, text } from './column.ts';

export const soundDataTable = describeTable('soundData', { id: text, sound: text, data: text });
