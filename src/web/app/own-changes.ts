// Which changes this window made itself: the live channel tells of them too, and they need no second refresh.

const own = new Set<string>();
const most = 500;

/** Remembers a change as this window's own. */
export function markOwnChange(id: string): void {
  own.add(id);
  for (const oldest of own) {
    if (own.size <= most) break;
    own.delete(oldest);
  }
}

/** Whether this window made the change. */
export const isOwnChange = (id: string): boolean => own.has(id);
