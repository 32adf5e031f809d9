// What can be wrong with a problem file, said so that whoever wrote the file can mend it.

export type ProblemFaultKind =
  | 'MissingField'
  | 'WrongType'
  | 'OutOfRange'
  | 'TooMany'
  | 'NoSuchDate'
  | 'OutOfOrder'
  | 'DuplicateId'
  | 'UnknownId'
  | 'Cycle'
  | 'CannotFit'
  | 'Contradiction';

export interface ProblemFault {
  readonly kind: ProblemFaultKind;
  /** Where, as `activities[3].minChunk`; empty for the file as a whole. */
  readonly path: string;
  /** What is wrong there. */
  readonly wrong: string;
  /** How to mend it. */
  readonly mend: string;
}

/** One line for a person: where, what, how to mend. */
export function formatProblemFault(fault: ProblemFault): string {
  return `${fault.path === '' ? 'the problem' : fault.path}: ${fault.wrong}; ${fault.mend}`;
}
