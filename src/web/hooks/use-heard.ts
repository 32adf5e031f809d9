import { useEffect, useRef, useState } from 'react';

/** What changes faster than this is one change to who hears it, in milliseconds. */
const quietFor = 1_500;

/**
 * What a screen reader is to say in a `role="status"`: `text`, once `of` has changed and then stood still for a while;
 * nothing of what stood there at first, nor while `of` is null. The same text is said again when `of` changes again (WCAG
 * 2.2, success criterion 4.1.3).
 */
export function useHeard(of: unknown, text: string): string {
  const [heard, setHeard] = useState('');
  const [first] = useState({ of });
  const hasChanged = useRef(false);
  const latest = useRef(text);
  latest.current = text;
  useEffect(() => {
    if (of === first.of && !hasChanged.current) return;
    hasChanged.current = true;
    // Emptied before, so that the same words are news again.
    setHeard('');
    if (of === null) return;
    const timer = window.setTimeout(() => setHeard(latest.current), quietFor);
    return () => window.clearTimeout(timer);
  }, [of, first]);
  return heard;
}
