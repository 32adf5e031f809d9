// Every table, in an order in which each comes after those it refers to.
import { courseTable } from './course.js';
import { courseUnitTable } from './course-unit.js';
import { eventTable } from './event.js';
import { familyTable } from './family.js';
import { groupTable } from './group.js';
import { holidayTable } from './holiday.js';
import { lessonTable } from './lesson.js';
import { observationTable } from './observation.js';
import { segmentTable } from './segment.js';
import { setAsideTable } from './set-aside.js';
import { skillTable } from './skill.js';
import { slotTable } from './slot.js';
import { studentTable } from './student.js';
import { studioTable } from './studio.js';
import { termTable } from './term.js';
import { unitTable } from './unit.js';
import { unitVersionTable } from './unit-version.js';
/** The description of each table by its name in `#studio`. */
export const tables = {
    studio: studioTable,
    family: familyTable,
    student: studentTable,
    group: groupTable,
    skill: skillTable,
    unit: unitTable,
    unitVersion: unitVersionTable,
    term: termTable,
    holiday: holidayTable,
    course: courseTable,
    courseUnit: courseUnitTable,
    slot: slotTable,
    event: eventTable,
    lesson: lessonTable,
    segment: segmentTable,
    observation: observationTable,
    setAside: setAsideTable,
};
/** The tables' names, referred-to ones first. */
export const tableNames = Object.keys(tables);
//# sourceMappingURL=tables.js.map