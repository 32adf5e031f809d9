/** Path of an installed Chromium, Chrome or Edge, or null. */
export function findBrowser(): string | null;
/** As `findBrowser`, installing Debian's chromium where this user may. */
export function findOrInstallBrowser(): string | null;
