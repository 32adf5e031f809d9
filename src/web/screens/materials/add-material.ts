// A unit with one more material on one of its activities.

import type { Activity, ActivityKey, MaterialReference, UnitDocument } from '#planning';
import { titleToSlug, uniqueSlug } from '../units/slug.ts';

export interface NewMaterial {
  readonly title: string;
  readonly spec: unknown;
  /** null lets each student have their own. */
  readonly seed: number | null;
}

/**
 * The unit with the material added to the activity of this key, for everyone: a variant with materials of its own gets it
 * too. Its own key is made from its title.
 */
export function addMaterial(
  unit: UnitDocument,
  activity: ActivityKey,
  { title, spec, seed }: NewMaterial,
): UnitDocument {
  const add = (one: Activity): Activity => {
    if (one.key !== activity) return one;
    const ownMaterials = one.variants.flatMap((variant) => variant.materials ?? []);
    const taken = new Set([...one.materials, ...ownMaterials].map((other) => other.key));
    const material: MaterialReference = {
      key: uniqueSlug(titleToSlug(title, 'material'), taken),
      title,
      spec,
      ...(seed === null ? {} : { seed }),
    };
    return {
      ...one,
      materials: [...one.materials, material],
      variants: one.variants.map((variant) =>
        variant.materials === undefined
          ? variant
          : { ...variant, materials: [...variant.materials, material] },
      ),
    };
  };
  return { ...unit, activities: unit.activities.map(add), extensions: unit.extensions.map(add) };
}
