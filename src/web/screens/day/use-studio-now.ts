import { useEffect, useState } from 'react';
import { useStudio } from '../../hooks/use-view.ts';
import { type StudioNow, studioNow } from './studio-now.ts';

/** The studio's day and time, kept up to date; null until the studio is known. */
export function useStudioNow(): StudioNow | null {
  const { data, dataUpdatedAt } = useStudio();
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const look = () => setNow(Date.now());
    const timer = window.setInterval(look, 10_000);
    document.addEventListener('visibilitychange', look);
    return () => {
      window.clearInterval(timer);
      document.removeEventListener('visibilitychange', look);
    };
  }, []);
  return data ? studioNow({ date: data.today, time: data.now }, now - dataUpdatedAt) : null;
}
