// Shares and heats of the search, found by counting which choices led to gains for the work they cost, and by trial on
// generated problems of seeds below 8000.

export const tuning = {
  // of the budget
  /** Share of what is left of the budget that each level gets at most; the last gets the rest. */
  shareByLevel: [0.55, 0.6, 0.9, 1],
  /** A level is left early after this share of what was left when it began without a gain. */
  patience: 0.3,
  // of acceptance
  /** Losses still worth trying at the start: in minutes of the least weight, in weights of P, in units of E. */
  heatU: 6,
  heatP: 1.2,
  heatE: 20,
  /** While P or E is searched, what is settled may rise for a moment with this share of its heat. */
  heatOfUAtP: 0.3,
  heatOfUAtE: 0.1,
  heatOfPAtE: 0.1,
  /** Among plans equal so far, later work is kept with this heat of E. */
  earlinessAtU: 20,
  earlinessAtP: 10,
  /** Moves of single minutes after each plan kept. */
  minuteMoves: 20,
  /** Share of rounds that swap chunks instead, by level; swaps tried in one; share of them that move one chunk alone. */
  swapShare: [0.2, 0.2, 0.3],
  swaps: 30,
  moveShare: 0.35,
  /** Of the swaps in one round, those of whole lessons. */
  lessonSwaps: 2,
  // of the ruin
  /** Share of ruins at level U that make room for work crowded out; most lessons cleared; share that clears them wholly. */
  makeRoomShare: 0.3,
  roomLessons: 3,
  wholeRoomShare: 0.3,
  /** Share of the other ruins that take strands out of two lessons, by level. */
  strandShare: [0, 0.2, 0.2],
  /** Of those left, share in neighbouring lessons; up to the next around one activity; the rest along a chain. */
  neighboursShare: 0.55,
  aroundUpTo: 0.85,
  /** Sizes of a ruin: from the least, so many in turn. */
  leastRuin: 2,
  ruinSizes: 4,
  /** Most unfinished activities tried with each ruin: of these at level U, up to that later. */
  unfinishedAtU: 2,
  unfinishedLater: 2,
  // of putting back
  /** Share of rounds in which revisits go in before work. */
  reviewsFirstAtP: 0.05,
  reviewsFirstAtE: 0.4,
  /** How often what rests on an activity makes way when that cannot be complete in time. */
  ejectShare: 0.2,
  /** Wanted number of activities a round that get a little less than they had in one lesson; share of them at most. */
  nudges: 1.5,
  nudgeShare: 0.55,
  /** Share of rounds without lessons closed or lowered. */
  noRoofShare: 0.7,
  /** Share of rounds in which heavy work goes in first, beside its turn among the other orders. */
  heavyFirstShare: 0.5,
  /** Share of rounds that price squared minutes, for small chunks. */
  squareShare: 0.25,
  /** Share of rounds that count a weight of P for less. */
  factorShare: 0.3,
  /** Share of rounds with odd prices of lessons, in problems with few activities × lessons only. */
  priceShare: 0.5,
  smallProduct: 80,
};
