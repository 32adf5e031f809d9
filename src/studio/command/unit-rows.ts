// A unit document as the rows that keep it: the newest copy, and each version for good.

import type { UnitDocument } from '#planning';
import type { UnitRecord, UnitVersionRecord } from '../record/records.ts';

/** The rows for one version of a unit. `savedAt` is an instant. */
export function unitRows(
  document: UnitDocument,
  version: number,
  savedAt: string,
  retired = false,
): { readonly unit: UnitRecord; readonly version: UnitVersionRecord } {
  const numbered = { ...document, version };
  return {
    unit: {
      id: document.id,
      version,
      title: document.title,
      area: document.area,
      document: numbered,
      retired,
    },
    version: {
      id: unitVersionId(document.id, version),
      unit: document.id,
      version,
      document: numbered,
      savedAt,
    },
  };
}

/** `unit:call-and-answer`, 2 → `unit-version:call-and-answer-v2` */
export const unitVersionId = (unit: UnitDocument['id'], version: number): UnitVersionRecord['id'] =>
  `unit-version:${unit.slice('unit:'.length)}-v${version}` as UnitVersionRecord['id'];
