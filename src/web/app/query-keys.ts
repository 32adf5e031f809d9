// Names of the cached views, and which of them a change touches.

import type { CommandType } from '#contract';

export const keys = {
  studio: ['studio'],
  day: (date: string) => ['day', date],
  lesson: (id: string) => ['lesson', id],
  students: ['students'],
  student: (id: string) => ['student', id],
  erasure: (id: string, called: readonly string[]) => ['erasure', id, called],
  course: (id: string) => ['course', id],
  units: ['units'],
  unit: (id: string, version?: number) => ['unit', id, version ?? 'newest'],
  courseUnit: (id: string) => ['courseUnit', id],
  skills: ['skills'],
  term: ['term'],
  takes: (student: string) => ['takes', student],
  take: (id: string) => ['take', id],
  changes: ['changes'],
} as const;

/** The first words of the keys of all views. */
export type ViewName =
  | 'studio'
  | 'day'
  | 'lesson'
  | 'students'
  | 'student'
  | 'erasure'
  | 'course'
  | 'units'
  | 'unit'
  | 'courseUnit'
  | 'skills'
  | 'takes'
  | 'take'
  | 'term'
  | 'changes';

const calendar: readonly ViewName[] = ['studio', 'day', 'lesson', 'students', 'course', 'term', 'changes'];
const library: readonly ViewName[] = ['studio', 'units', 'unit', 'courseUnit', 'course', 'skills', 'changes'];
const people: readonly ViewName[] = [
  'takes',
  'studio',
  'day',
  'lesson',
  'students',
  'student',
  'course',
  'term',
  'changes',
];

/** The views that a change of this type may touch; `null` for all of them. `viewsTouchedBy('undo')` → null */
export function viewsTouchedBy(type: CommandType): readonly ViewName[] | null {
  const [subject] = type.split('.');
  switch (subject) {
    case 'student':
    case 'group':
      return people;
    case 'term':
    case 'holiday':
      return calendar;
    case 'unit':
    case 'skill':
      return library;
    case 'lesson':
    case 'segment':
    case 'activity':
      return ['day', 'lesson', 'course', 'students', 'term', 'changes'];
    case 'observe':
      return ['day', 'lesson', 'course', 'students', 'term', 'takes', 'take', 'changes'];
    case 'take':
      return ['takes', 'take', 'course', 'changes'];
    case 'material':
      return ['lesson', 'course', 'changes'];
    case 'consent':
      return ['takes', 'changes'];
    default:
      return null;
  }
}
