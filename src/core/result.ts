// Expected outcomes as values: a function that can fail for a reason a person can mend returns a Result.

export type Ok<T> = { readonly ok: true; readonly value: T };
export type Err<E> = { readonly ok: false; readonly error: E };
export type Result<T, E> = Ok<T> | Err<E>;

/** Wraps a success. `ok(3)` → `{ ok: true, value: 3 }` */
export const ok = <T>(value: T): Ok<T> => ({ ok: true, value });

/** Wraps an expected failure. `err({ kind: 'NoSuchStudent' })` → `{ ok: false, error: { kind: 'NoSuchStudent' } }` */
export const err = <E>(error: E): Err<E> => ({ ok: false, error });
