import { boolean, describeTable, integer, json, real, realOrNull, text, textOrNull } from './column.js';
export const segmentTable = describeTable('segment', {
    id: text,
    lesson: text,
    course: text,
    position: integer,
    key: text,
    kind: text,
    strand: textOrNull,
    courseUnit: textOrNull,
    activity: textOrNull,
    skill: textOrNull,
    title: text,
    start: real,
    minutes: real,
    completes: boolean,
    pinned: boolean,
    reasons: json,
    seconds: realOrNull,
    covered: realOrNull,
    outcome: textOrNull,
    note: text,
});
//# sourceMappingURL=segment.js.map