// One handler for each command but those that are several; a command without one does not compile.

import type { CommandType } from '#contract';
import { noteAbsent } from './absence-commands.ts';
import { putHolidays, putTerm, removeHoliday, removeTerm } from './calendar-commands.ts';
import {
  changeCourse,
  courseLooked,
  endCourse,
  openCourse,
  putEvent,
  putSlot,
  removeEvent,
  removeSlot,
  replan,
} from './course-commands.ts';
import {
  changeCourseUnit,
  giveUnit,
  removeCourseUnit,
  takeFromLibrary,
  takeIntoLibrary,
} from './course-unit-commands.ts';
import type { Handler } from './desk.ts';
import { eraseStudent } from './erase-command.ts';
import { changeFamily, joinFamily } from './family-commands.ts';
import { putGroup, removeGroup } from './group-commands.ts';
import {
  addLesson,
  barLesson,
  cancelLesson,
  missLesson,
  moveLesson,
  restoreLesson,
} from './lesson-commands.ts';
import { importUnits, putSkill, removeSkill, retireUnit, saveUnit } from './library-commands.ts';
import { closeLesson, logSegment, observe, removeObservation } from './logging-commands.ts';
import { keepMaterial, removeMaterial } from './material-commands.ts';
import { addSegment, moveSegment, pinSegment, setActivityAside, takeActivityUp } from './segment-commands.ts';
import {
  addStudent,
  addStudents,
  changeStudent,
  removeStudent,
  studentLeaves,
  studentReturns,
} from './student-commands.ts';
import { changeStudio, foundStudio } from './studio-commands.ts';
import { discardTake, eraseSounds, giveConsent, keepTake, withdrawConsent } from './take-commands.ts';
import { undoChange } from './undo.ts';
import { writeLesson, writeSegment } from './writing-commands.ts';

export const handlers: { readonly [T in Exclude<CommandType, 'together'>]: Handler<T> } = {
  'studio.found': foundStudio,
  'studio.change': changeStudio,
  'student.add': addStudent,
  'student.addMany': addStudents,
  'student.change': changeStudent,
  'student.leave': studentLeaves,
  'student.return': studentReturns,
  'student.remove': removeStudent,
  'family.join': joinFamily,
  'family.change': changeFamily,
  'student.erase': eraseStudent,
  'group.put': putGroup,
  'group.remove': removeGroup,
  'term.put': putTerm,
  'term.remove': removeTerm,
  'holiday.putMany': putHolidays,
  'holiday.remove': removeHoliday,
  'course.open': openCourse,
  'course.change': changeCourse,
  'course.end': endCourse,
  'slot.put': putSlot,
  'slot.remove': removeSlot,
  'event.put': putEvent,
  'event.remove': removeEvent,
  'course.replan': replan,
  'course.looked': courseLooked,
  'courseUnit.give': giveUnit,
  'courseUnit.change': changeCourseUnit,
  'courseUnit.remove': removeCourseUnit,
  'courseUnit.takeIntoLibrary': takeIntoLibrary,
  'courseUnit.takeFromLibrary': takeFromLibrary,
  'unit.save': saveUnit,
  'unit.retire': retireUnit,
  'unit.import': importUnits,
  'skill.put': putSkill,
  'skill.remove': removeSkill,
  'lesson.add': addLesson,
  'lesson.cancel': cancelLesson,
  'lesson.miss': missLesson,
  'lesson.restore': restoreLesson,
  'lesson.move': moveLesson,
  'lesson.bar': barLesson,
  'lesson.absent': noteAbsent,
  'lesson.write': writeLesson,
  'segment.write': writeSegment,
  'segment.log': logSegment,
  observe,
  'observe.remove': removeObservation,
  'lesson.close': closeLesson,
  'segment.add': addSegment,
  'segment.pin': pinSegment,
  'segment.move': moveSegment,
  'activity.setAside': setActivityAside,
  'activity.takeUp': takeActivityUp,
  'material.keep': keepMaterial,
  'material.remove': removeMaterial,
  'consent.give': giveConsent,
  'consent.withdraw': withdrawConsent,
  'take.keep': keepTake,
  'take.discard': discardTake,
  'take.eraseSounds': eraseSounds,
  undo: undoChange,
};
