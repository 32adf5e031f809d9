import { useCallback, useState } from 'react';

const storageKey = 'levare-single-keys';

/** Whether single letters, digits and the space bar act in teaching mode; kept in this browser. */
export function useSingleKeys(): readonly [boolean, (on: boolean) => void] {
  const [on, setOn] = useState(() => {
    try {
      return localStorage.getItem(storageKey) !== 'off';
    } catch {
      return true;
    }
  });
  const set = useCallback((next: boolean) => {
    setOn(next);
    try {
      localStorage.setItem(storageKey, next ? 'on' : 'off');
    } catch {
      // Until the page is left.
    }
  }, []);
  return [on, set];
}
