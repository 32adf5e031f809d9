/** What is left of a number in whole turns of `by`: from 0 to just below it, of negative numbers too. `modulo(-1, 12)` → 11 */
export const modulo = (value: number, by: number): number => ((value % by) + by) % by;
