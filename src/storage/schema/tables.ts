// Every table, in an order in which each comes after those it refers to.

import type { TableName } from '#studio';
import type { TableDescription } from './column.ts';
import { consentTable } from './consent.ts';
import { courseTable } from './course.ts';
import { courseUnitTable } from './course-unit.ts';
import { eventTable } from './event.ts';
import { familyTable } from './family.ts';
import { groupTable } from './group.ts';
import { holidayTable } from './holiday.ts';
import { lessonTable } from './lesson.ts';
import { lessonMaterialTable } from './lesson-material.ts';
import { observationTable } from './observation.ts';
import { segmentTable } from './segment.ts';
import { setAsideTable } from './set-aside.ts';
import { skillTable } from './skill.ts';
import { slotTable } from './slot.ts';
import { soundTable } from './sound.ts';
import { soundDataTable } from './sound-data.ts';
import { studentTable } from './student.ts';
import { studioTable } from './studio.ts';
import { takeTable } from './take.ts';
import { termTable } from './term.ts';
import { unitTable } from './unit.ts';
import { unitVersionTable } from './unit-version.ts';

/** The description of each table by its name in `#studio`. */
export const tables: { readonly [T in TableName]: TableDescription<T> } = {
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
  lessonMaterial: lessonMaterialTable,
  consent: consentTable,
  sound: soundTable,
  soundData: soundDataTable,
  take: takeTable,
  observation: observationTable,
  setAside: setAsideTable,
};

/** The tables' names, referred-to ones first. */
export const tableNames = Object.keys(tables) as readonly TableName[];

/** What is deleted of these is gone for good: the journal keeps no second copy of sounds, so undo leaves them alone. */
export const unjournalled: ReadonlySet<TableName> = new Set<TableName>(['sound', 'soundData']);
