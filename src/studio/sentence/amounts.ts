// Counts and lists as they stand in sentences. Days are said by `formatDay` of planning.

/** `formatCount(1, 'lesson')` → `1 lesson`; `formatCount(3, 'lesson')` → `3 lessons` */
export function formatCount(count: number, thing: string, things: string = `${thing}s`): string {
  return `${count} ${count === 1 ? thing : things}`;
}

/** `formatList(['a', 'b', 'c'])` → `a, b and c`; beyond `most` they become "and n more". */
export function formatList(items: readonly string[], most = 6): string {
  if (items.length > most) return `${items.slice(0, most).join(', ')} and ${items.length - most} more`;
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
