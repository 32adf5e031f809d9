// Moving a row of a list to another place.

/** The list with the item at `from` standing at `to`; places outside the list are brought to its ends. */
export function reorder<Item>(items: readonly Item[], from: number, to: number): readonly Item[] {
  const item = items[from];
  if (item === undefined) return items;
  const without = items.toSpliced(from, 1);
  return without.toSpliced(Math.min(Math.max(0, to), without.length), 0, item);
}

/**
 * Where a dragged row would stand, by the height of the pointer. `middles` are the middles of all rows from top to
 * bottom, the dragged one's among them.
 */
export function placeOfPointer(middles: readonly number[], from: number, pointer: number): number {
  return middles.filter((middle, at) => at !== from && middle < pointer).length;
}
