// Places a thing by CSS custom properties, so that a stylesheet can let go of the place on a narrow page.

import type { CSSProperties } from 'react';

/** `place({ left: '12%' })` → a style that sets `--left` */
export const place = (given: Readonly<Record<string, string>>): CSSProperties =>
  Object.fromEntries(Object.entries(given).map(([name, value]) => [`--${name}`, value]));
