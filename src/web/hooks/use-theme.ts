import { useSyncExternalStore } from 'react';
import { onTheme, readTheme, setTheme, type Theme } from '../app/theme.ts';

/** The theme of this browser and how to change it. */
export function useTheme(): readonly [Theme, (theme: Theme) => void] {
  return [useSyncExternalStore(onTheme, readTheme), setTheme];
}
