import { describeTable, integer, json, text, textOrNull } from './column.js';
export const courseTable = describeTable('course', {
    id: text,
    revision: integer,
    student: textOrNull,
    group: textOrNull,
    instrument: text,
    stage: text,
    strands: json,
    settings: json,
    moved: json,
    ended: textOrNull,
});
//# sourceMappingURL=course.js.map