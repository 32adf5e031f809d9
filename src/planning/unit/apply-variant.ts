// One activity as this student meets it.

import type { Stage } from '#core';
import type { Activity, ActivityVariant } from './unit.ts';

export interface VariantFor {
  readonly stage: Stage;
  /** In years; null when unknown, and then variants for an age do not fit. */
  readonly age: number | null;
}

/** The activity with the first fitting variant laid over it and no variants left, so applying it again changes nothing. */
export function applyVariant(activity: Activity, student: VariantFor): Activity {
  const variant = activity.variants.find((one) => variantFits(one, student));
  return {
    ...activity,
    title: variant?.title ?? activity.title,
    howTo: variant?.howTo ?? activity.howTo,
    minutes: variant?.minutes ?? activity.minutes,
    materials: variant?.materials ?? activity.materials,
    bring: variant?.bring ?? activity.bring,
    variants: [],
  };
}

/** Whether a variant is meant for this stage and age; one that names neither fits everyone. */
export function variantFits(variant: ActivityVariant, { stage, age }: VariantFor): boolean {
  const { stages, ages } = variant;
  if (stages !== undefined && !stages.includes(stage)) return false;
  if (ages === undefined) return true;
  return age !== null && age >= ages.from && age <= ages.to;
}
