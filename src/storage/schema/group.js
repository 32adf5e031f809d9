import { describeTable, integer, json, text } from './column.js';
export const groupTable = describeTable('group', {
    id: text,
    revision: integer,
    name: text,
    members: json,
}, 'player_group');
//# sourceMappingURL=group.js.map