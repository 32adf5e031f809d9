// How far a student is on an instrument.

export const stages = ['beginner', 'elementary', 'intermediate', 'advanced'] as const;

/** beginner: about the first year; elementary: the second; intermediate: up to the fourth; advanced: beyond. */
export type Stage = (typeof stages)[number];
