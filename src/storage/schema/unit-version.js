import { describeTable, integer, json, text } from './column.js';
export const unitVersionTable = describeTable('unitVersion', {
    id: text,
    unit: text,
    version: integer,
    document: json,
    savedAt: text,
});
//# sourceMappingURL=unit-version.js.map