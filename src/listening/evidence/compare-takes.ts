// Two takes side by side: the same figures, the difference, and whether it is larger than the measurement's own doubt.

import { type Figure, type FigureUnit, figure } from './figure.ts';
import { type Evidence, type EvidenceName, evidenceNames } from './gather-evidence.ts';

export interface FigureChange {
  readonly row: EvidenceName;
  /** The figure's name within the row. */
  readonly name: string;
  readonly unit: FigureUnit;
  /** Null where that take gave none. */
  readonly before: Figure | null;
  readonly after: Figure | null;
  /** After less before; null unless both were heard. */
  readonly difference: Figure | null;
  /** Whether the difference is larger than its uncertainty; null unless both were heard. */
  readonly isLarger: boolean | null;
}

/** Every figure that at least one of the takes gave, in the order of the rows. */
export function compareTakes(before: Evidence, after: Evidence): readonly FigureChange[] {
  return evidenceNames.flatMap((row) => {
    const [a, b] = [figuresOf(before, row), figuresOf(after, row)];
    const names = [...new Set([...Object.keys(a), ...Object.keys(b)])];
    return names.flatMap((name): readonly FigureChange[] => {
      const [was, is] = [a[name] ?? null, b[name] ?? null];
      const unit = (was ?? is)?.unit;
      if (unit === undefined) return [];
      const difference =
        was === null || is === null
          ? null
          : figure(is.value - was.value, Math.hypot(was.uncertainty, is.uncertainty), unit);
      return [
        {
          row,
          name,
          unit,
          before: was,
          after: is,
          difference,
          isLarger: difference === null ? null : Math.abs(difference.value) > difference.uncertainty,
        },
      ];
    });
  });
}

/** The figures of a row by name; none when it could not be heard. */
export function figuresOf(
  evidence: Evidence,
  name: EvidenceName,
): Readonly<Record<string, Figure | undefined>> {
  const row = evidence[name];
  return row.heard ? row.figures : {};
}
