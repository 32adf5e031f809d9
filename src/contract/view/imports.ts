// What is in a file, before any of it is taken.

import type { Id, PlainDate, PlainTime, Weekday } from '#core';
import type { InstrumentId } from '#music';
import type { Skill, Stage, UnitDocument } from '#planning';
import type { ContactView } from './students.ts';

export const studentColumns = [
  'name',
  'born',
  'birthYear',
  'age',
  'instrument',
  'stage',
  'family',
  'contactName',
  'contactRelation',
  'phone',
  'email',
  'note',
  'weekday',
  'time',
  'minutes',
] as const;
export type StudentColumn = (typeof studentColumns)[number];

export interface StudentImportPreview {
  readonly header: readonly string[];
  /** For each column of the file, what it is taken as, or null to leave it out. */
  readonly mapping: readonly (StudentColumn | null)[];
  readonly rows: readonly {
    /** Line in the file, counted from 1. */
    readonly line: number;
    readonly cells: readonly string[];
    readonly student: {
      readonly name: string;
      readonly born: PlainDate | null;
      readonly birthYear: number | null;
      readonly instruments: readonly { readonly instrument: InstrumentId; readonly stage: Stage }[];
      readonly contacts: readonly ContactView[];
      readonly note: string;
      readonly slot: { readonly weekday: Weekday; readonly time: PlainTime; readonly minutes: number } | null;
    } | null;
    /** What is wrong in this row and how to mend it; empty when it can be taken. */
    readonly faults: readonly { readonly column: string; readonly message: string }[];
    /** A student of this name is here already. */
    readonly twin: Id<'student'> | null;
  }[];
  /** Who may be siblings; nobody is made one unless the teacher says so. */
  readonly siblings: readonly SiblingsFound[];
}

/** Two or more who may be siblings: rows of the file, and students who are here already. */
export interface SiblingsFound {
  /** Lines in the file. */
  readonly lines: readonly number[];
  readonly here: readonly { readonly id: Id<'student'>; readonly name: string }[];
  /** The family that one of those here belongs to. */
  readonly family: Id<'family'> | null;
  /** What tells it: a column of the file, or the same surname with the same contact. */
  readonly why: 'column' | 'contact';
}

export interface HolidayImportPreview {
  readonly holidays: readonly {
    readonly name: string;
    readonly starts: PlainDate;
    readonly ends: PlainDate;
    readonly source: string;
    readonly known: boolean;
  }[];
  readonly faults: readonly string[];
}

export interface UnitImportPreview {
  readonly units: readonly {
    readonly document: UnitDocument;
    readonly known: number | null;
    readonly findings: readonly string[];
  }[];
  readonly skills: readonly Skill[];
  readonly faults: readonly string[];
}
