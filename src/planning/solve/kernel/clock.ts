// The clock of the search, the same on every machine: work done so far, in about nanoseconds of the machine it was fitted on
// (least squares over 200 generated problems of three sizes; of middle-sized ones 90 in 100 took 0.91 to 1.11 of what it said).

export let work: f64 = 0;

export function clearWork(): void {
  work = 0;
}

export function addWork(by: i32): void {
  work += f64(by);
}
