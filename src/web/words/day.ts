// What the day page says.

import type { LessonStatusView } from '#contract';

const lessons = (n: number) => (n === 1 ? '1 lesson' : `${n} lessons`);

export const day = {
  title: 'Day',
  place: { now: 'now', next: 'next' },
  previous: 'Previous teaching day',
  next: 'Next teaching day',
  today: 'Today',
  goToDate: 'Go to day',
  print: 'Print day sheet',
  sum: (count: number, minutes: string, from: string, to: string) =>
    `${lessons(count)} · ${minutes} · ${from}–${to}`,
  wantDecision: (n: number) => (n === 1 ? '1 thing wants a decision' : `${n} things want a decision`),
  programme: 'Lessons of the day',

  nowMinute: (minute: number, of: number) => `now, minute ${minute} of ${of}`,
  backToBack: 'back to back',
  free: (minutes: string) => `${minutes} free`,
  overlap: (minutes: string) => `overlap by ${minutes}`,

  number: (n: number) => `lesson ${n}`,
  age: (n: number) => `${n} years`,
  youngest: (n: number) => `youngest ${n} years`,
  status: {
    planned: 'planned',
    taught: 'taught',
    missed: 'missed',
    cancelled: 'cancelled',
  } satisfies Record<LessonStatusView, string>,
  offWith: (status: LessonStatusView, reason: string) =>
    reason
      ? `${status === 'missed' ? 'Missed' : 'Cancelled'}: ${reason}`
      : status === 'missed'
        ? 'Missed'
        : 'Cancelled',
  segmentsOf: (name: string) => `What ${name}’s lesson holds`,
  revisit: 'revisit',
  nothingPlanned: 'Nothing planned yet.',
  lastTime: 'Last time',

  teach: 'Teach',
  giveTo: (name: string) => `to ${name}`,
  open: 'Open',
  close: 'Close',
  change: 'Change',
  changeOf: (name: string) => `Change ${name}’s lesson`,
  cancel: 'Cancel…',
  miss: 'Missed…',
  move: 'Move…',
  restore: 'Restore',

  dialog: {
    cancelTitle: (name: string) => `Cancel ${name}’s lesson`,
    cancelHelp: 'The time is free, the work moves to the lessons after it.',
    cancelDo: 'Cancel the lesson',
    missTitle: (name: string) => `${name} missed the lesson`,
    missHelp: 'Counts as missed; the work moves to the lessons after it.',
    missDo: 'Record as missed',
    moveTitle: (name: string) => `Move ${name}’s lesson`,
    moveHelp: 'What is planned in it goes along.',
    moveDo: 'Move the lesson',
    reason: 'Reason',
    reasonHelp: 'May stay empty.',
    usualReasons: 'Usual reasons',
    reasons: ['Ill', 'Holiday', 'School event', 'I am away'],
    missReasons: ['Ill', 'Forgot', 'No message', 'Transport'],
    date: 'Day',
    time: 'Time',
    minutes: 'Minutes',
    leave: 'Leave as it is',
    badMinutes: 'Between 10 and 240 minutes.',
    badTime: 'A time of day, such as 16:30.',
    badDate: 'A day that exists.',
  },

  setUp: 'To set up',
  setUpLeft: (left: number, all: number) =>
    all === 0 ? '' : left === 0 ? 'all done' : left === 1 ? '1 thing' : `${left} things`,
  nothingToSetUp: 'Nothing to print, bring or set up.',
  setUpFor: (names: string) => `for ${names}`,

  emptyHoliday: (name: string) => `${name}: no lessons.`,
  emptyDay: 'No lessons on this day.',
  emptyStudio: 'The lessons of a day stand here, each with what it holds, once a student has a weekly time.',
  nextDay: (day: string) => `Go to ${day}`,
  addStudents: 'Add students',
  toTerm: 'See the term',
  notADay: 'There is no such day. A day is written year-month-day, such as 2026-11-25.',
} as const;
