import { describeTable, integer, json, text } from './column.js';
export const familyTable = describeTable('family', {
    id: text,
    revision: integer,
    name: text,
    contacts: json,
    note: text,
});
//# sourceMappingURL=family.js.map