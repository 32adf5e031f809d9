// Shares and heats of the search, found by regression: searches of generated problems (never those of the bench) with every
// number a little higher or lower at random, ranked among all searches of their problem. See docs/decisions/0009.

/** By level of the objective: U, P, E and moves. */
function byLevel(level: i32, u: f64, p: f64, e: f64, moves: f64): f64 {
  return level === 0 ? u : level === 1 ? p : level === 2 ? e : moves;
}

// of the budget
/** Share of what is left of the budget that each level gets at most; the last gets the rest. */
export function shareByLevel(level: i32): f64 {
  return byLevel(level, 0.49, 0.83, 0.9, 1);
}
/** A level is left early after this share of what was left when it began without a gain. */
export function patience(level: i32): f64 {
  return byLevel(level, 0.38, 0.34, 0.2, 0.2);
}

// of a plan made anew
/** Plans kept side by side. */
export const members: i32 = 8;
/** Crosses of two of them. */
export const crosses: i32 = 15;
/** Share of the budget for the first walks and the crosses, and of that for the first walks. */
export const crossesShare: f64 = 0.355;
export const firstShare: f64 = 0.12;
/** Heats of these walks, by their square, and most of the work of the first ones at level U; the others are not about U. */
export const firstWarmth: f64 = 0.35;
export const undoneShareOfFirst: f64 = 0.5;
export const crossWarmth: f64 = 0.5;
export const lastWarmth: f64 = 0.62;
/** Share of crosses that take activities from the other plan rather than lessons. */
export const activitiesShare: f64 = 0.5;

// of acceptance
/** Losses still worth trying at the start: in minutes of the least weight, in weights of P, in units of E. */
export const heatU: f64 = 1.55;
export const heatP: f64 = 0.78;
export const heatE: f64 = 12.7;
/** While P or E is searched, what is settled may rise for a moment with this share of its heat. */
export const heatOfUAtP: f64 = 0.22;
export const heatOfUAtE: f64 = 0.1;
export const heatOfPAtE: f64 = 0.07;
/** Among plans equal so far, later work is kept with this heat of E. */
export const earlinessAtU: f64 = 34;
export const earlinessAtP: f64 = 28.6;
/** Times that the walk at P and at E goes back to the best plan. */
export const returns: i32 = 3;
/** At level U, among equal plans: what a squared minute counts for beside E. */
export const squareWorth: f64 = 2;
/** Moves of single minutes after each plan kept. */
export const minuteMoves: i32 = 45;
/** Share of rounds that swap chunks instead. */
export function swapShare(level: i32): f64 {
  return byLevel(level, 0.12, 0.17, 0.23, 0);
}
/** Moves of chunks tried in one. */
export const swaps: i32 = 60;
/** At E, share of them that begin with the later of two chunks. */
export const laterShare: f64 = 0.4;
/** Share that join another chunk of the activity, and of these, share that leave some minutes behind. */
export const joinShare: f64 = 0.2;
export const joinPartShare: f64 = 0.41;
/** Of the others, share that move a part of a chunk only. */
export const partShare: f64 = 0.56;
/** Share of steps of a chain that push minutes on instead of a chunk. */
export const shiftShare: f64 = 0.35;
/** Of the moves in one round, those of whole lessons. */
export const lessonSwaps: i32 = 3;

// of the ruin
/** Share of ruins at level U that make room for work crowded out; most lessons cleared; share that clears them wholly. */
export const makeRoomShare: f64 = 0.42;
export const roomLessons: i32 = 2;
export const wholeRoomShare: f64 = 0.3;
/** Share of the others that clear a lesson and fill it anew with even chunks. */
export function evenShare(level: i32): f64 {
  return byLevel(level, 0.05, 0.05, 0.04, 0);
}
/** Share of those left that make room for a late revisit; most lessons after it, and most activities there, that join in. */
export function soonShare(level: i32): f64 {
  return byLevel(level, 0, 0.16, 0.05, 0);
}
export const soonSpan: i32 = 3;
export const soonOthers: i32 = 4;
/** Share of the other ruins that take strands out of two lessons, by level. */
export function strandShare(level: i32): f64 {
  return byLevel(level, 0, 0.2, 0.17, 0);
}
/** Of those left, share in neighbouring lessons; up to the next around one activity; the rest along a chain. */
export const neighboursShare: f64 = 0.36;
export const aroundUpTo: f64 = 0.73;
/** Sizes of a ruin, in turn: from the least to the most. */
export function leastRuin(level: i32): i32 {
  return level < 3 ? 1 : 2;
}
export function mostRuin(level: i32): i32 {
  return level < 3 ? 3 : 5;
}
/** Most unfinished activities tried with each ruin: of these at level U, up to that later. */
export const unfinishedAtU: i32 = 3;
export const unfinishedLater: i32 = 3;

// of putting back
/** Share of rounds in which revisits go in before work. */
export function reviewsFirst(level: i32): f64 {
  return byLevel(level, 0, 0.05, 0.19, 0.35);
}
/** How often what rests on an activity makes way when that cannot be complete in time. */
export const ejectShare: f64 = 0.2;
/** Wanted number of activities a round that get a little less than they had in one lesson; share of them at most. */
export const nudges: f64 = 1.3;
export const nudgeShare: f64 = 0.55;
/** Share of rounds without lessons closed or lowered. */
export const noRoofShare: f64 = 0.97;
/** Share of rounds that lift revisits out of the lessons of the ruin. */
export const liftShare: f64 = 0.96;
/** Share of rounds in which work goes in first that found no room before (squeaky wheels: D. Joslin and D. Clements, 1999). */
export const failedFirstShare: f64 = 0.34;
/** Share of the others in which heavy work goes in first, beside its turn among the other orders. */
export const heavyFirstShare: f64 = 0.7;
/** Share of rounds that price squared minutes, for small chunks. */
export const squareShare: f64 = 0.19;
/** Share of rounds that count a weight of P for less. */
export const factorShare: f64 = 0.25;
/** Share of rounds with odd prices of lessons, in problems with few activities × lessons only. */
export const priceShare: f64 = 0.6;
export const smallProduct: i32 = 80;
/** Most minutes too many in a lesson, for which other work makes way. */
export const mostSpill: i32 = 4;
