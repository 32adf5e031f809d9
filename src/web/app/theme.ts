// Paper, hall or the system's choice, kept in this browser.

export type Theme = 'paper' | 'hall' | 'system';
export const themes: readonly Theme[] = ['paper', 'hall', 'system'];

const key = 'levare-theme';
const listeners = new Set<() => void>();

const isTheme = (text: string | null): text is Theme => themes.some((theme) => theme === text);

/** The theme chosen on this browser, or `system`. */
export function readTheme(): Theme {
  try {
    const kept = localStorage.getItem(key);
    return isTheme(kept) ? kept : 'system';
  } catch {
    return 'system';
  }
}

/** Shows a theme and keeps it for next time. */
export function setTheme(theme: Theme): void {
  try {
    localStorage.setItem(key, theme);
  } catch {
    // A browser that keeps nothing still shows it on this page.
  }
  document.documentElement.setAttribute('data-theme', theme);
  for (const listener of listeners) listener();
}

/** Tells when the theme changes; returns how to stop. */
export function onTheme(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
