import { describeTable, integer, text, textOrNull } from './column.js';
export const slotTable = describeTable('slot', {
    id: text,
    course: text,
    weekday: integer,
    time: text,
    minutes: integer,
    starts: text,
    ends: textOrNull,
});
//# sourceMappingURL=slot.js.map