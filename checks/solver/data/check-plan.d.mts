// Types for the judge beside this file, which is plain JavaScript.
export interface Judgement {
  readonly feasible: boolean;
  readonly broken: readonly string[];
  readonly objective: { readonly U: number; readonly P: number; readonly E: number };
  readonly parts: { readonly late: number; readonly solo: number; readonly splits: number; readonly extMiss: number };
  readonly maxOverrun: number;
}
export function evaluate(problem: unknown, plan: unknown): Judgement;
export function qmaxTable(C: number, z: number, sigma: number, tau: number): number[];
export function overrunProb(M: number, Q: number, C: number, sigma: number, tau: number): number;
