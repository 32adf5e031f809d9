// Bugs are thrown, never returned.

/** Throws when an invariant of our own code is broken. Never use it on input from outside. */
export function assert(condition: boolean, invariant: string): asserts condition {
  if (!condition) throw new Error(`Broken invariant: ${invariant}`);
}

/** Ends an exhaustive switch: does not compile while a case is missing. */
export function unreachable(value: never): never {
  throw new Error(`Unreachable case: ${JSON.stringify(value)}`);
}

/** The value, where the code around it has already made sure that there is one. */
export function present<T>(value: T | null | undefined, what: string): T {
  assert(value !== null && value !== undefined, `${what} is present`);
  return value;
}
