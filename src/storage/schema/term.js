import { describeTable, text } from './column.js';
export const termTable = describeTable('term', {
    id: text,
    name: text,
    starts: text,
    ends: text,
});
//# sourceMappingURL=term.js.map