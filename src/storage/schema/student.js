import { describeTable, integer, integerOrNull, json, text, textOrNull } from './column.js';
export const studentTable = describeTable('student', {
    id: text,
    revision: integer,
    name: text,
    born: textOrNull,
    birthYear: integerOrNull,
    instruments: json,
    family: textOrNull,
    contacts: json,
    note: text,
    since: text,
    left: textOrNull,
});
//# sourceMappingURL=student.js.map