// What every part of the editor is given.

import type { Skill } from '#planning';
import { words } from '../../words/index.ts';
import type { DraftFaults } from './find-draft-faults.ts';
import type { Handle } from './handle.ts';
import type { FindingPlace } from './place-findings.ts';
import type { UnitDraft } from './unit-draft.ts';

export interface Editing {
  readonly draft: UnitDraft;
  readonly edit: (change: (draft: UnitDraft) => UnitDraft) => void;
  /** The sentence to show at a field now; null when there is none yet. */
  readonly faultOf: (field: string) => string | null;
  /** Whether a row or one of the rows within it has a fault that is shown. */
  readonly hasFault: (handles: readonly Handle[]) => boolean;
  readonly findingsAt: (place: FindingPlace) => readonly string[];
  /** The key a row will be saved under, to look up its findings. */
  readonly keyOf: (handle: Handle) => string;
  readonly skills: readonly Skill[];
}

const { faults } = words.units;
const missing: ReadonlySet<string> = new Set([
  faults.titleMissing,
  faults.goalMissing,
  faults.stagesMissing,
  faults.activityTitleMissing,
  faults.skillMissing,
  faults.lookForMissing,
]);

/** What is not there yet is said once saving was tried; what is written and wrong, at once. */
export function shownFault(all: DraftFaults, field: string, tried: boolean): string | null {
  const fault = all.get(field) ?? null;
  return fault !== null && (tried || !missing.has(fault)) ? fault : null;
}
