// What one insertion works on: room and price of a chunk in each lesson, and the arrays of its dynamic programme.

import { reviewFits } from './insert-review.ts';
import { fillInts, int, newInts, newReals, real, setInt, setReal } from './memory.ts';
import {
  capacity,
  demandOf,
  dueAfter,
  hasLast,
  lastMinutes,
  lateWeight,
  lessonCount,
  maxBlocks,
  maxChunkOf,
  maxRun,
  maxStrands,
  minChunkOf,
  mostDemand,
  parkGap,
  reviewMinutes,
  reviewOf,
  soloWeight,
  splitWeight,
  squareLimit,
  strandCount,
  strandOf,
} from './model.ts';
import { draw } from './random.ts';
import { blocks, squares, strandBlocks, strandsIn, total } from './state.ts';

/** Weight of P against E inside one activity, where E stays below 60 lessons × 600 minutes. */
export const pWeight: f64 = 1e6;
/** Weight of a minute moved from the last plan: below any step of E. */
const moveWeight: f64 = 1e-5;
/** A roof that lets everything pass. */
export const noRoof: i32 = 1 << 10;
/** Price of a minute for which other work makes way: above E, below P. */
const spillPrice: f64 = 100;

/** Minutes by which the insertion at hand may make a lesson too full, for other work to make way. */
let spill: i32 = 0;
/** Most minutes that fit in each lesson without. */
let fits: i32 = 0;

/** Most minutes an activity may get in each lesson this time; the search lowers it to try something else. */
export let roof: i32 = 0;
export let cost: i32 = 0;
export let nextCost: i32 = 0;
/** Choices by lesson and minutes, numbers of 16 bits: `choiceAt`. */
let choices: i32 = 0;
export let cap: i32 = 0;
export let row: i32 = 0;
export let chunkCost: i32 = 0;
export let lateCost: i32 = 0;
export let minuteCost: i32 = 0;
/** Price of a minute in each lesson: its index, as in E, or anything else while E does not count yet. */
export let lessonPrice: i32 = 0;
/** Least price from each lesson on. */
export let leastPrice: i32 = 0;
let hasOddPrices: bool = false;
/** Price of a squared minute: above 0 makes small chunks that leave room under the overrun limit. */
let squarePrice: f64 = 0;
/** What this round makes of the weights of P: 1 as they are, less to try what they forbid. */
export let splitFactor: f64 = 1;
let soloFactor: f64 = 1;
let lateFactor: f64 = 1;
// of the insertion at hand: lessons prepared so far, first lesson a revisit fits
let preparedTo: i32 = -1;
let fittingReview: i32 = 0;
/** Last lesson the programme looked at. */
export let stop: i32 = 0;

export function createInserter(): void {
  const width = (mostDemand + 1) * (maxRun + parkGap + 1);
  roof = newInts(lessonCount);
  fits = newInts(lessonCount);
  cost = newReals(width);
  nextCost = newReals(width);
  choices = newInts((width * lessonCount + 1) >> 1);
  cap = newInts(lessonCount);
  row = newInts(lessonCount);
  chunkCost = newReals(lessonCount);
  lateCost = newReals(lessonCount);
  minuteCost = newReals(mostDemand + 1);
  lessonPrice = newReals(lessonCount);
  leastPrice = newReals(lessonCount + 1);
}

export function clearInserter(): void {
  fillInts(roof, lessonCount, noRoof);
  for (let l = 0; l <= lessonCount; l++) {
    if (l < lessonCount) setReal(lessonPrice, l, f64(l));
    setReal(leastPrice, l, f64(l));
  }
  hasOddPrices = false;
  squarePrice = 0;
  setFactors(1, 1, 1);
}

export function setSquarePrice(price: f64): void {
  squarePrice = price;
}

export function setFactors(split: f64, solo: f64, late: f64): void {
  splitFactor = split;
  soloFactor = solo;
  lateFactor = late;
}

export function setStop(l: i32): void {
  stop = l;
}

/** Starts an insertion that may spill so many minutes from each lesson. */
export function startInsertion(from: i32, mostSpilt: i32): void {
  spill = mostSpilt;
  preparedTo = from - 1;
  fittingReview = 0;
}

/** Makes minutes dear at random, or later ones dearer, as in E. */
export function setPrices(odd: bool): void {
  if (!odd && !hasOddPrices) return;
  hasOddPrices = odd;
  for (let l = lessonCount - 1; l >= 0; l--) {
    const price = odd ? f64(lessonCount) * draw() : f64(l);
    setReal(lessonPrice, l, price);
    setReal(leastPrice, l, l + 1 < lessonCount ? min(price, real(leastPrice, l + 1)) : price);
  }
}

/** A choice above 0 is minutes placed; otherwise nothing is placed and minus it is the run state before. */
export function choiceAt(index: i32): i32 {
  return i32(load<i16>(choices + (index << 1)));
}

export function setChoice(index: i32, choice: i32): void {
  store<i16>(choices + (index << 1), i16(choice));
}

/** Room and cost of a chunk in one lesson, once per insertion, lessons in order. */
export function prepareLesson(i: i32, l: i32): void {
  if (l <= preparedTo) return;
  preparedTo = l;
  setInt(cap, l, 0);
  if (int(blocks, l) >= int(maxBlocks, l)) return;
  const placed = int(total, l);
  const minChunk = int(minChunkOf, i);
  const most = min(min(int(maxChunkOf, i), int(capacity, l) - placed), int(roof, l));
  if (most + spill < minChunk) return;
  const others = int(strandsIn, l);
  let solo = 0;
  if (int(strandBlocks, l * strandCount + int(strandOf, i)) === 0) {
    if (others >= int(maxStrands, l)) return;
    if (others === 0) solo = 1;
    else if (others === 1) solo = -1;
  }
  const squared = int(squares, l);
  let m = spill > 0 ? 1 : minChunk;
  while (m <= most && squared + m * m <= squareLimit(l, placed + m)) m++;
  const fitting = m - 1;
  const highest = spill > 0 ? min(min(int(maxChunkOf, i), int(roof, l)), fitting + spill) : fitting;
  if (highest < minChunk) return;
  setInt(fits, l, fitting);
  setInt(cap, l, highest);
  setReal(chunkCost, l, (splitWeight * splitFactor + f64(solo) * soloWeight * soloFactor) * pWeight);
  setReal(lateCost, l, 0);
  const r = int(reviewOf, i);
  if (r < 0 || lateFactor === 0 || lateWeight === 0) return;
  const due = int(dueAfter, l);
  if (due >= lessonCount) return;
  // later lessons have later due ones, so the first that fits only moves on
  const length = int(reviewMinutes, r);
  fittingReview = max(due, fittingReview);
  while (fittingReview < lessonCount && !reviewFits(fittingReview, length)) fittingReview++;
  setReal(lateCost, l, lateWeight * lateFactor * f64(fittingReview - due) * pWeight);
}

/** What each number of minutes of an activity costs in a lesson. */
export function priceMinutes(i: i32, l: i32, most: i32): void {
  const chunk = real(chunkCost, l);
  const price = real(lessonPrice, l);
  const before = hasLast ? int(lastMinutes, i * lessonCount + l) : 0;
  for (let m = int(minChunkOf, i); m <= most; m++) {
    let here = chunk + price * f64(m) + squarePrice * f64(m) * f64(m);
    if (hasLast) here += f64(abs(m - before) - before) * moveWeight;
    setReal(minuteCost, m, here);
  }
  const fitting = int(fits, l);
  for (let m = max(int(minChunkOf, i), fitting + 1); m <= most; m++)
    setReal(minuteCost, m, real(minuteCost, m) + spillPrice * f64(m - fitting));
}

/** Least that the chunks still to come of an incomplete activity can cost, minutes aside. */
export function leastToCome(i: i32): f64 {
  const demand = int(demandOf, i);
  const chunk = (splitWeight * splitFactor - soloWeight * abs(soloFactor)) * pWeight;
  const most = chunk < 0 ? chunk * f64(demand / int(minChunkOf, i)) : chunk;
  return most - (hasLast ? f64(2 * demand) * moveWeight : 0);
}

/** Least cost of so many minutes over the states of the run, which stand `stride` apart. */
export function leastOf(s: i32, states: i32, stride: i32): f64 {
  let least = real(cost, s);
  for (let k = 1; k < states; k++) least = min(least, real(cost, k * stride + s));
  return least;
}

export function swapCosts(): void {
  const before = cost;
  cost = nextCost;
  nextCost = before;
}
