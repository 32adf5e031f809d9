import { describeTable, text } from './column.js';
export const holidayTable = describeTable('holiday', {
    id: text,
    name: text,
    starts: text,
    ends: text,
    source: text,
});
//# sourceMappingURL=holiday.js.map