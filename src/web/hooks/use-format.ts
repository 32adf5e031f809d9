import { useMemo } from 'react';
import type { PlainDate, PlainTime, Weekday } from '#core';
import {
  type DayForm,
  formatDay,
  formatDays,
  formatMinutes,
  formatMoment,
  formatShare,
  formatStretch,
  formatTime,
  formatWeekday,
} from '../app/format.ts';
import { useStudio } from './use-view.ts';

/** The studio's locale, or this browser's before there is a studio. */
export function useLocale(): string {
  const { data } = useStudio();
  return data?.locale || navigator.language;
}

/** The formats of app/format.ts, bound to the studio's locale and time zone. */
export function useFormat() {
  const locale = useLocale();
  const timeZone = useStudio().data?.timeZone || 'UTC';
  return useMemo(
    () => ({
      locale,
      day: (date: PlainDate, form?: DayForm) => formatDay(date, locale, form),
      days: (from: PlainDate, to: PlainDate) => formatDays(from, to, locale),
      time: (time: PlainTime) => formatTime(time, locale),
      weekday: (weekday: Weekday, form?: 'long' | 'short') => formatWeekday(weekday, locale, form),
      minutes: (minutes: number) => formatMinutes(minutes, locale),
      stretch: (minutes: number) => formatStretch(minutes, locale),
      share: (share: number) => formatShare(share, locale),
      moment: (instant: string) => formatMoment(instant, locale, timeZone),
    }),
    [locale, timeZone],
  );
}
