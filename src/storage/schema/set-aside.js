import { describeTable, text, textOrNull } from './column.js';
export const setAsideTable = describeTable('setAside', {
    id: text,
    course: text,
    courseUnit: text,
    activity: text,
    since: text,
    backFrom: textOrNull,
});
//# sourceMappingURL=set-aside.js.map