import { describeTable, integer, json, text, textOrNull } from './column.js';
export const courseUnitTable = describeTable('courseUnit', {
    id: text,
    course: text,
    unit: text,
    unitVersion: integer,
    document: json,
    strand: text,
    position: integer,
    notBefore: textOrNull,
    notAfter: textOrNull,
});
//# sourceMappingURL=course-unit.js.map