import { boolean, describeTable, json, text } from './column.js';
export const skillTable = describeTable('skill', {
    id: text,
    title: text,
    area: text,
    stage: text,
    description: text,
    restsOn: json,
    ongoing: boolean,
});
//# sourceMappingURL=skill.js.map