// What is wrong with a file someone wrote by hand: where, what, and how to mend it.

export interface UnitFault {
  /** `TooLarge`: not read at all. `Syntax`: not YAML or JSON. `Shape`: readable, but not a unit or skill map. */
  readonly kind: 'TooLarge' | 'Syntax' | 'Shape';
  /** `unit.activities[2].minutes.usual`; empty for the whole file. */
  readonly path: string;
  /** Completes "this field …": `is 240, more than 120`. */
  readonly problem: string;
  /** A sentence: `Write 120 or less.` */
  readonly mend: string;
  /** From 1; known for YAML, and for JSON where the text itself is broken. */
  readonly line?: number;
  readonly column?: number;
}

/**
 * One fault as a line of text.
 * `unit.activities[2].minutes.usual (line 40, column 14) is 240, more than 120. Write 120 or less.`
 */
export function formatUnitFault(fault: UnitFault): string {
  const where = fault.path === '' ? 'The file' : fault.path;
  const place = fault.line === undefined ? '' : ` (line ${fault.line}, column ${fault.column ?? 1})`;
  return `${where}${place} ${fault.problem}. ${fault.mend}`;
}

/** `['unit', 'activities', 2, 'title']` → `unit.activities[2].title` */
export function formatFieldPath(path: readonly PropertyKey[]): string {
  let text = '';
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`;
    else text += text === '' ? String(step) : `.${String(step)}`;
  }
  return text;
}
