// What can be wrong with a typed or stored material spec, told so that a person can mend it.

/** Any JSON value a field may hold. */
export type JsonValue = string | number | boolean | null | readonly JsonValue[];

export type SpecFaultKind =
  | 'MissingField'
  | 'UnknownField'
  | 'WrongType'
  | 'NotAChoice'
  | 'OutOfRange'
  | 'Unreadable';

export interface SpecFault {
  readonly kind: SpecFaultKind;
  /** JSON pointer (RFC 6901) to the field: `/octaves`, empty for the spec as a whole. */
  readonly at: string;
  /** What stands there, and why it will not do. */
  readonly wrong: string;
  /** The nearest value that would be taken; null when there is none to offer. */
  readonly nearest: JsonValue;
  /** One sentence with field, trouble and mend. */
  readonly message: string;
}

/** A short, safe picture of any JSON value for a message. */
export function pictureOf(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') return `“${value.length > 40 ? `${value.slice(0, 40)}…` : value}”`;
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}

/** A fault with its sentence. `at` is a JSON pointer. */
export function specFault(kind: SpecFaultKind, at: string, wrong: string, nearest: JsonValue): SpecFault {
  const field = at === '' ? 'The spec' : `“${at.slice(1)}”`;
  const mend =
    nearest === null
      ? ''
      : ` ${kind === 'UnknownField' ? 'Did you mean' : 'The nearest is'} ${kind === 'UnknownField' ? `“${nearest}”?` : `${JSON.stringify(nearest)}.`}`;
  return { kind, at, wrong, nearest, message: `${field} ${wrong}.${mend}` };
}
