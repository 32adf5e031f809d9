// What a lesson holds before any work is planned into it: settling in, recap, what the teacher pinned, setting practice.

import { squareLimits } from '../problem/overrun.ts';
import type { ProblemLesson } from '../problem/problem.ts';
import type { CourseInput, LessonInput, Pin } from './course-input.ts';

/** A pin with the minutes that the lesson can give it. */
export type FramedPin = Pin & { readonly given: number };

export interface LessonFrame {
  readonly lesson: LessonInput;
  readonly settlingIn: number;
  readonly recap: number;
  readonly practice: number;
  readonly pins: readonly FramedPin[];
  /** Most minutes of revisits. */
  readonly reviewMax: number;
  /** Minutes for planned work, recap and revisits. */
  readonly room: number;
}

/** Minutes by which ongoing skills lengthen settling in: one each, at most two, or three from 45 minutes on. */
export function ongoingMinutes(count: number, lessonMinutes: number): number {
  return lessonMinutes < 20 ? 0 : Math.min(count, lessonMinutes < 45 ? 2 : 3);
}

/** The minutes of one revisit by age: 2 for the youngest to 5. Common practice, no source. */
export function revisitMinutes(age: number | null): number {
  if (age === null || age >= 16) return 5;
  return age <= 8 ? 2 : age <= 11 ? 3 : 4;
}

export interface Risk {
  readonly z: number;
  readonly sigma: number;
  readonly tau: number;
}

/** Frames one lesson. `opensWithRecap`: some lesson was taught, or is planned, before it. */
export function frameLesson(
  input: CourseInput,
  lesson: LessonInput,
  ongoing: number,
  opensWithRecap: boolean,
  risk: Risk,
): LessonFrame {
  const { settings } = input;
  // In a very short lesson the frame gives way to the work: a quarter and a sixth of it at most.
  const settlingIn = Math.min(
    settings.settlingIn + ongoingMinutes(ongoing, lesson.minutes),
    Math.floor(lesson.minutes / 4),
  );
  const practice = Math.min(settings.settingPractice, Math.floor(lesson.minutes / 6));
  let left = lesson.minutes - settlingIn - practice;
  const pins: FramedPin[] = [];
  for (const pin of input.pins) {
    const given = Math.min(pin.minutes, left);
    if (pin.lesson !== lesson.id || given <= 0) continue;
    pins.push({ ...pin, given });
    left -= given;
  }
  if (lesson.barred) return { lesson, settlingIn, recap: 0, practice, pins, reviewMax: 0, room: 0 };
  return {
    lesson,
    settlingIn,
    recap: opensWithRecap ? fittingRecap(settings.recap, left, risk) : 0,
    practice,
    pins,
    reviewMax: settings.revisit,
    room: left,
  };
}

/** The longest recap up to the wanted one that leaves the chance of overrun where it should be. */
function fittingRecap(wanted: number, room: number, { z, sigma, tau }: Risk): number {
  const limits = squareLimits(room, z, sigma, tau);
  for (let recap = Math.min(wanted, room); recap > 0; recap--)
    if (recap * recap <= (limits[recap] ?? -1)) return recap;
  return 0;
}

/** The longest single go that one of the lessons can hold beside its recap. */
export function longestFit(frames: readonly LessonFrame[], { z, sigma, tau }: Risk): number {
  let longest = 0;
  for (const room of new Set(frames.map((frame) => frame.room))) {
    const recap = Math.max(...frames.filter((frame) => frame.room === room).map((frame) => frame.recap));
    const limits = squareLimits(room, z, sigma, tau);
    for (let go = room - recap; go > longest; go--)
      if (go * go + recap * recap <= (limits[go + recap] ?? -1)) longest = go;
  }
  return longest;
}

/** The lesson as the planning problem has it. */
export function frameToProblemLesson(
  frame: LessonFrame,
  mostBlocks: number,
  mostStrands: number,
): ProblemLesson {
  const pinnedWork = frame.pins.filter((pin) => pin.kind === 'activity').length;
  return {
    id: frame.lesson.id,
    date: frame.lesson.date,
    length: frame.lesson.minutes,
    fixed: frame.lesson.minutes - frame.room,
    recap: frame.recap,
    reviewMax: frame.reviewMax,
    maxBlocks: frame.room === 0 ? 0 : Math.max(0, mostBlocks - pinnedWork),
    maxStrands: mostStrands,
  };
}
