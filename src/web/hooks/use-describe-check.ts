import { useCallback } from 'react';
import { type CheckSpec, describeCheck } from '#listening';
import { useStudio } from './use-view.ts';

/** What is listened for, in the names of notes that the studio uses. */
export function useDescribeCheck(): (spec: CheckSpec) => string {
  const naming = useStudio().data?.noteNames ?? 'british';
  return useCallback((spec: CheckSpec) => describeCheck(spec, naming), [naming]);
}
