import { boolean, describeTable, integer, json, text } from './column.js';
export const studioTable = describeTable('studio', {
    id: text,
    revision: integer,
    name: text,
    teacher: text,
    timeZone: text,
    locale: text,
    noteNames: text,
    paper: text,
    defaults: json,
    demo: boolean,
});
//# sourceMappingURL=studio.js.map