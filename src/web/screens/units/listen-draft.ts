// What a check has listened for, as it is being written: numbers are still text, and shares are per cent, as people write them.

import { type CheckField, type CheckKind, type CheckSpec, checkFields, findCrossedBounds } from '#listening';
import { words } from '../../words/index.ts';
import type { Handle } from './handle.ts';

export interface ListenDraft {
  readonly handle: Handle;
  readonly kind: CheckKind;
  /** What is written in each field of its kind, by the field's name. */
  readonly texts: Readonly<Record<string, string>>;
}

const says = words.listenFor;

/** Whether a field is a share of one, which is written in per cent. */
export const isShare = (field: CheckField): boolean =>
  field.type === 'number' && !field.isWhole && field.low === 0 && field.high === 1;

/** The bounds of a field as they are written. */
export const writtenBounds = (field: CheckField): readonly [number, number] =>
  isShare(field) ? [0, 100] : [field.low, field.high];

const numberToText = (field: CheckField, value: number): string =>
  String(isShare(field) ? Number((value * 100).toFixed(10)) : value);

/** A number as written, with a point or a comma, else NaN; a share of one where it is written in per cent. */
function textToNumber(field: CheckField, text: string): number {
  const plain = text.trim().replace(',', '.');
  const value = /^\d{1,6}(\.\d{1,12})?$/.test(plain) ? Number(plain) : Number.NaN;
  return isShare(field) ? Number((value / 100).toFixed(12)) : value;
}

/** A kind with its usual values, to begin with. */
export function newListenDraft(handle: Handle, kind: CheckKind): ListenDraft {
  const texts = checkFields[kind].map(
    (field) =>
      [field.name, typeof field.usual === 'number' ? numberToText(field, field.usual) : field.usual] as const,
  );
  return { handle, kind, texts: Object.fromEntries(texts) };
}

/** A stored spec opened for writing. */
export function specToDraft(spec: CheckSpec, handle: Handle): ListenDraft {
  const values: Readonly<Record<string, unknown>> = { ...spec };
  const texts = checkFields[spec.kind].map((field) => {
    const value = values[field.name];
    return [field.name, typeof value === 'number' ? numberToText(field, value) : String(value)] as const;
  });
  return { handle, kind: spec.kind, texts: Object.fromEntries(texts) };
}

/** The spec as written; what is not a number is NaN, and `findListenFaults` says so. */
export function draftToSpec({ kind, texts }: ListenDraft): CheckSpec {
  const values = checkFields[kind].map((field) => {
    const text = texts[field.name] ?? '';
    return [field.name, field.type === 'value' ? text : textToNumber(field, text)] as const;
  });
  return { kind, ...Object.fromEntries(values) } as CheckSpec; // every field of its kind, from the table
}

/** What must be mended, a sentence for each field. */
export function findListenFaults(draft: ListenDraft): ReadonlyMap<string, string> {
  const faults = new Map<string, string>();
  for (const field of checkFields[draft.kind]) {
    if (field.type !== 'number') continue;
    const value = textToNumber(field, draft.texts[field.name] ?? '');
    const [low, high] = writtenBounds(field);
    if (!(value >= field.low && value <= field.high)) faults.set(field.name, says.outside(low, high));
    else if (field.isWhole && !Number.isInteger(value)) faults.set(field.name, says.notWhole(low, high));
  }
  const crossed = faults.size === 0 ? findCrossedBounds({ ...draftToSpec(draft) }) : null;
  if (crossed !== null) faults.set(crossed[1], says.crossed);
  return faults;
}
