import { boolean, describeTable, integer, json, text } from './column.js';
export const unitTable = describeTable('unit', {
    id: text,
    version: integer,
    title: text,
    area: text,
    document: json,
    retired: boolean,
});
//# sourceMappingURL=unit.js.map