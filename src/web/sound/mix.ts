// The mix of a band: faders, who is muted, who plays alone.

import type { PartName } from '#music';

export interface Mix {
  /** 0 to 100. */
  readonly levels: Readonly<Record<PartName, number>>;
  readonly muted: ReadonlySet<PartName>;
  readonly solo: ReadonlySet<PartName>;
}

/** Count, click and held tone serve whoever plays: a solo leaves them in. */
export const soloists: ReadonlySet<PartName> = new Set(['bass', 'keys', 'drums', 'tune']);

/** How loud a part is heard, 0 to 1; a fader is square-law, so that half of it sounds like half. */
export function shareOf({ levels, muted, solo }: Mix, part: PartName): number {
  const isLeftOut = muted.has(part) || (solo.size > 0 && soloists.has(part) && !solo.has(part));
  return isLeftOut ? 0 : (levels[part] / 100) ** 2;
}

/** With a part added to some, or taken away where it is among them. */
export const toggled = (some: ReadonlySet<PartName>, part: PartName): ReadonlySet<PartName> =>
  some.has(part) ? new Set([...some].filter((one) => one !== part)) : new Set([...some, part]);
