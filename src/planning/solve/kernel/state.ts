// A plan under construction: minutes by activity and lesson, the lesson of each revisit, and the sums the search needs,
// kept up to date cell by cell, with a journal to take a whole step back.

import { addWork } from './clock.ts';
import { addInt, copyInts, fillInts, int, long, newInts, newLongs, real, setInt, setLong } from './memory.ts';
import {
  activityCount,
  capacity,
  demandOf,
  dueAfter,
  lessonCount,
  maxBlocks,
  maxStrands,
  recap,
  reviewActivity,
  reviewCount,
  reviewDue,
  reviewMinutes,
  reviewOf,
  reviewWeight,
  squareLimit,
  strandCount,
  strandOf,
} from './model.ts';

/** Work of putting back half a change. */
const undoWork: i32 = 24;

/** Stands for "not placed", "not complete". */
export const never: i32 = 1 << 20;

/** Minutes, activity-major: `minutes[i * lessonCount + l]`. */
export let minutes: i32 = 0;
export let reviewAt: i32 = 0;
// by lesson
export let total: i32 = 0;
export let squares: i32 = 0;
export let opening: i32 = 0;
export let blocks: i32 = 0;
export let strandsIn: i32 = 0;
/** Blocks by lesson and strand: `strandBlocks[l * strandCount + s]`. */
export let strandBlocks: i32 = 0;
// by activity
export let sum: i32 = 0;
export let chunks: i32 = 0;
/** The lessons it stands in, a bit each from the lowest, in words of 64: found faster than by looking at its row. */
let standing: i32 = 0;
let words: i32 = 0;
export let firstAt: i32 = 0;
export let doneAt: i32 = 0;
/** Lesson of the last chunk. */
export let endAt: i32 = 0;
/** Activity and lesson of each cell: looked up, since a division costs more. */
export let activityOf: i32 = 0;
export let lessonOf: i32 = 0;
/** Cells changed since `startStep`: a cell or −1 − review, and what stood there. */
export let journal: i32 = 0;
export let journalLength: i32 = 0;

export function createState(): void {
  const cells = activityCount * lessonCount;
  minutes = newInts(cells);
  reviewAt = newInts(reviewCount);
  total = newInts(lessonCount);
  squares = newInts(lessonCount);
  opening = newInts(lessonCount);
  blocks = newInts(lessonCount);
  strandsIn = newInts(lessonCount);
  strandBlocks = newInts(lessonCount * strandCount);
  sum = newInts(activityCount);
  chunks = newInts(activityCount);
  words = max(1, (lessonCount + 63) >> 6);
  standing = newLongs(activityCount * words);
  firstAt = newInts(activityCount);
  doneAt = newInts(activityCount);
  endAt = newInts(activityCount);
  activityOf = newInts(cells);
  lessonOf = newInts(cells);
  for (let cell = 0; cell < cells; cell++) {
    setInt(activityOf, cell, cell / lessonCount);
    setInt(lessonOf, cell, cell % lessonCount);
  }
  // a step takes each activity out and puts it in a few times at most: recreate.ts
  journal = newInts(64 * (cells + activityCount) + 32 * reviewCount + 64);
}

/** Nothing placed. */
export function clearState(): void {
  fillInts(minutes, activityCount * lessonCount, 0);
  fillInts(reviewAt, reviewCount, never);
  fillInts(blocks, lessonCount, 0);
  fillInts(strandsIn, lessonCount, 0);
  fillInts(strandBlocks, lessonCount * strandCount, 0);
  fillInts(sum, activityCount, 0);
  fillInts(chunks, activityCount, 0);
  for (let k = 0; k < activityCount * words; k++) setLong(standing, k, 0);
  for (let l = 0; l < lessonCount; l++) {
    const minutesOfRecap = int(recap, l);
    setInt(total, l, minutesOfRecap);
    setInt(squares, l, minutesOfRecap * minutesOfRecap);
    setInt(opening, l, minutesOfRecap);
  }
  for (let i = 0; i < activityCount; i++) refreshActivity(i);
  journalLength = 0;
}

export function startStep(): void {
  journalLength = 0;
}

/** Puts back everything changed since `startStep`. */
export function undoStep(): void {
  addWork(undoWork * journalLength);
  for (let k = journalLength - 2; k >= 0; k -= 2) {
    const cell = int(journal, k);
    const before = int(journal, k + 1);
    if (cell < 0) writeReview(-1 - cell, before);
    else writeCell(cell, before);
  }
  let refreshed = -1;
  for (let k = 0; k < journalLength; k += 2) {
    const cell = int(journal, k);
    const i = cell < 0 ? -1 : int(activityOf, cell);
    // the cells of an activity mostly stand together
    if (i < 0 || i === refreshed) continue;
    refreshed = i;
    refreshActivity(i);
  }
  journalLength = 0;
}

/** Sets the minutes of one activity in one lesson; call `refreshActivity` when its row is done. */
export function setMinutes(i: i32, l: i32, m: i32): void {
  const cell = i * lessonCount + l;
  remember(cell, int(minutes, cell));
  writeCell(cell, m);
}

/** Moves a revisit to a lesson, or to `never`. */
export function setReview(r: i32, l: i32): void {
  remember(-1 - r, int(reviewAt, r));
  writeReview(r, l);
}

/** Takes an activity out of all its lessons, and its revisit with it. */
export function removeActivity(i: i32): void {
  if (int(chunks, i) === 0) return;
  for (let l = firstLesson(i); l !== never; l = lessonAfter(i, l)) {
    const cell = i * lessonCount + l;
    remember(cell, int(minutes, cell));
    writeCell(cell, 0);
  }
  refreshActivity(i);
  const r = int(reviewOf, i);
  if (r >= 0 && int(reviewAt, r) !== never) setReview(r, never);
}

/** The first lesson in which an activity stands, or `never`; right in the midst of changes too. */
export function firstLesson(i: i32): i32 {
  return lessonFrom(i, 0);
}

/** The next lesson in which it stands, or `never`. */
export function lessonAfter(i: i32, l: i32): i32 {
  return l + 1 < lessonCount ? lessonFrom(i, l + 1) : never;
}

function lessonFrom(i: i32, from: i32): i32 {
  const word = from >> 6;
  const left = long(standing, i * words + word) >> u64(from & 63);
  return left !== 0 ? from + i32(ctz(left)) : words === 1 ? never : firstFrom(i, word + 1);
}

function firstFrom(i: i32, from: i32): i32 {
  for (let word = from; word < words; word++) {
    const here = long(standing, i * words + word);
    if (here !== 0) return (word << 6) + i32(ctz(here));
  }
  return never;
}

function lastLesson(i: i32): i32 {
  for (let word = words - 1; word > 0; word--) {
    const here = long(standing, i * words + word);
    if (here !== 0) return (word << 6) + 63 - i32(clz(here));
  }
  const here = long(standing, i * words);
  return here !== 0 ? 63 - i32(clz(here)) : never;
}

/** First, completing and last lesson of an activity, which has no more than its demand. */
export function refreshActivity(i: i32): void {
  const demand = int(demandOf, i);
  const end = lastLesson(i);
  setInt(firstAt, i, firstLesson(i));
  setInt(endAt, i, end);
  setInt(doneAt, i, int(sum, i) < demand ? never : demand > 0 ? end : lessonCount > 0 ? 0 : never);
}

/** Lessons that pass between the goes of an activity. */
export function gapsOf(i: i32): i32 {
  const pieces = int(chunks, i);
  return pieces < 2 ? 0 : int(endAt, i) - int(firstAt, i) + 1 - pieces;
}

/** Whether an activity has minutes in one of these lessons. */
export function standsIn(i: i32, from: i32, until: i32): bool {
  return from <= until && lessonFrom(i, from) <= until;
}

/** Whether the minutes of a lesson keep its capacity and its limit on squares. */
export function minutesFit(l: i32): bool {
  const placed = int(total, l);
  return placed <= int(capacity, l) && int(squares, l) <= squareLimit(l, placed);
}

/** Whether a lesson keeps all its limits: its capacity, that on squares, and the most blocks and strands. */
export function lessonFits(l: i32): bool {
  return minutesFit(l) && int(strandsIn, l) <= int(maxStrands, l) && int(blocks, l) <= int(maxBlocks, l);
}

/** The lesson a revisit falls due in; `lessonCount` or `never` when it is not wanted within these lessons. */
export function dueOf(r: i32): i32 {
  const due = int(reviewDue, r);
  if (due >= 0) return due;
  const done = int(doneAt, int(reviewActivity, r));
  return done === never ? never : int(dueAfter, done);
}

/** Lessons that a revisit is late, weighted; not placed is late to the end. */
export function latenessOf(r: i32): f64 {
  const due = dueOf(r);
  if (due >= lessonCount) return 0;
  return real(reviewWeight, r) * f64(min(int(reviewAt, r), lessonCount) - due);
}

/** Makes the state that of a plan kept aside. */
export function restorePlan(keptMinutes: i32, keptReviewAt: i32): void {
  for (let cell = 0; cell < activityCount * lessonCount; cell++) writeCell(cell, int(keptMinutes, cell));
  for (let i = 0; i < activityCount; i++) refreshActivity(i);
  for (let r = 0; r < reviewCount; r++) writeReview(r, int(keptReviewAt, r));
  journalLength = 0;
}

/** Keeps the plan of the state aside. */
export function keepPlan(keptMinutes: i32, keptReviewAt: i32): void {
  copyInts(keptMinutes, minutes, activityCount * lessonCount);
  copyInts(keptReviewAt, reviewAt, reviewCount);
}

function remember(cell: i32, before: i32): void {
  setInt(journal, journalLength, cell);
  setInt(journal, journalLength + 1, before);
  journalLength += 2;
}

function writeCell(cell: i32, m: i32): void {
  const before = int(minutes, cell);
  if (before === m) return;
  const i = int(activityOf, cell);
  const l = int(lessonOf, cell);
  setInt(minutes, cell, m);
  addInt(total, l, m - before);
  addInt(squares, l, m * m - before * before);
  addInt(sum, i, m - before);
  if (before > 0 && m > 0) return;
  const sign = m > 0 ? 1 : -1;
  const word = i * words + (l >> 6);
  setLong(standing, word, long(standing, word) ^ (u64(1) << u64(l & 63)));
  addInt(chunks, i, sign);
  addInt(blocks, l, sign);
  const left = addInt(strandBlocks, l * strandCount + int(strandOf, i), sign);
  if (sign > 0 ? left === 1 : left === 0) addInt(strandsIn, l, sign);
}

function writeReview(r: i32, l: i32): void {
  const length = int(reviewMinutes, r);
  const before = int(reviewAt, r);
  if (before !== never) addOpening(before, -length);
  setInt(reviewAt, r, l);
  if (l !== never) addOpening(l, length);
}

function addOpening(l: i32, by: i32): void {
  const before = int(opening, l);
  const after = before + by;
  setInt(opening, l, after);
  addInt(total, l, by);
  addInt(squares, l, after * after - before * before);
}
