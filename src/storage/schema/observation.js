import { describeTable, integer, text, textOrNull } from './column.js';
export const observationTable = describeTable('observation', {
    id: text,
    course: text,
    student: textOrNull,
    lesson: textOrNull,
    skill: text,
    level: integer,
    date: text,
    note: text,
});
//# sourceMappingURL=observation.js.map