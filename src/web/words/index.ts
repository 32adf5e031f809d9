// The one catalogue of words on screen: one file per screen, British English. A translation is another catalogue of the
// same shape.

import { changes } from './changes.ts';
import { day } from './day.ts';
import { erase } from './erase.ts';
import { families } from './families.ts';
import { frame } from './frame.ts';
import { lesson } from './lesson.ts';
import { levels, levelWords } from './levels.ts';
import { listenFor } from './listen-for.ts';
import { materials } from './materials.ts';
import { player } from './player.ts';
import { practice } from './practice.ts';
import { score } from './score.ts';
import { settings } from './settings.ts';
import { stageNames } from './stages.ts';
import { student } from './student.ts';
import { students } from './students.ts';
import { studentsImport } from './students-import.ts';
import { takes } from './takes.ts';
import { term } from './term.ts';
import { units } from './units.ts';
import { welcome } from './welcome.ts';

export const words = {
  changes,
  day,
  erase,
  families,
  frame,
  lesson,
  levels,
  levelWords,
  listenFor,
  materials,
  player,
  practice,
  score,
  settings,
  stageNames,
  student,
  students,
  studentsImport,
  takes,
  term,
  units,
  welcome,
} as const;
