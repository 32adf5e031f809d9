import { useEffect } from 'react';
import { keepAwake } from '../app/keep-awake.ts';

/** Keeps the screen on while the component is shown and `wanted`, up to so many minutes after the last touch. */
export function useAwake(wanted: boolean, minutes: number): void {
  useEffect(() => {
    // Only pages from this machine or over https have it.
    if (!wanted || !('wakeLock' in navigator)) return;
    return keepAwake({ locks: navigator.wakeLock, page: document }, minutes * 60_000);
  }, [wanted, minutes]);
}
