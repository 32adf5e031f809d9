import { describeTable, text } from './column.js';
export const eventTable = describeTable('event', {
    id: text,
    course: text,
    date: text,
    title: text,
});
//# sourceMappingURL=event.js.map