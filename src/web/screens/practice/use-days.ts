// Several days, and several lessons, asked for together.

import { type UseQueryResult, useQueries } from '@tanstack/react-query';
import type { DayView, LessonView } from '#contract';
import { getView } from '../../app/api.ts';
import { keys } from '../../app/query-keys.ts';

export interface Together<View> {
  readonly given: readonly View[];
  /** The first that has not come, or could not; undefined once all are here. */
  readonly waiting: UseQueryResult<View> | undefined;
}

function combine<View>(views: UseQueryResult<View>[]): Together<View> {
  return {
    given: views.flatMap((view) => (view.data ? [view.data] : [])),
    waiting: views.find((view) => view.data === undefined),
  };
}

export function useDays(dates: readonly string[]): Together<DayView> {
  return useQueries({
    queries: dates.map((date) => ({
      queryKey: keys.day(date),
      queryFn: () => getView<DayView>(`/api/days/${encodeURIComponent(date)}`),
    })),
    combine: combine<DayView>,
  });
}

export function useLessons(ids: readonly string[]): Together<LessonView> {
  return useQueries({
    queries: ids.map((id) => ({
      queryKey: keys.lesson(id),
      queryFn: () => getView<LessonView>(`/api/lessons/${encodeURIComponent(id)}`),
    })),
    combine: combine<LessonView>,
  });
}
