// A unit document from outside, read in full: each fault says where, what, and how to mend it.

import type { Fault } from '#contract';
import { ok, type Result } from '#core';
import { formatUnitFault, parseUnitFile, type UnitDocument } from '#planning';
import { invalid } from './fault.ts';

export function readDocument(document: unknown): Result<UnitDocument, Fault> {
  const read = parseUnitFile({ unit: document });
  if (read.ok) return ok(read.value.unit);
  const [first] = read.error;
  return invalid(
    `document${first?.path === undefined ? '' : first.path.replace(/^unit/, '')}`,
    read.error.length === 1 && first !== undefined
      ? formatUnitFault(first)
      : `The unit has ${read.error.length} things to mend.`,
    read.error.slice(0, 20).map(formatUnitFault),
  );
}
