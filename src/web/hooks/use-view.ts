// One hook for each view of the contract. Each returns TanStack's result: `data`, `error` (an ApiFault), `isPending`.

import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type {
  ChangesView,
  CourseUnitCompareView,
  CourseView,
  DayView,
  ErasureView,
  LessonView,
  SkillMapView,
  StudentsView,
  StudentView,
  StudioView,
  TakesView,
  TakeView,
  TermView,
  UnitRow,
  UnitView,
} from '#contract';
import { getView } from '../app/api.ts';
import { keys } from '../app/query-keys.ts';

const at = (path: string, id: string) => `/api/${path}/${encodeURIComponent(id)}`;

/** A refused studio is not asked for again by each part of the page that says so: it would never come to rest. */
export const useStudio = () =>
  useQuery({
    queryKey: keys.studio,
    queryFn: () => getView<StudioView>('/api/studio'),
    retryOnMount: false,
  });

/** The last day stays on screen while the next one is fetched. */
export const useDay = (date: string) =>
  useQuery({
    queryKey: keys.day(date),
    queryFn: () => getView<DayView>(at('days', date)),
    placeholderData: keepPreviousData,
  });

export const useLesson = (id: string) =>
  useQuery({ queryKey: keys.lesson(id), queryFn: () => getView<LessonView>(at('lessons', id)) });

export const useStudents = () =>
  useQuery({ queryKey: keys.students, queryFn: () => getView<StudentsView>('/api/students') });

/** `null` asks for nothing. */
export const useStudent = (id: string | null) =>
  useQuery({
    queryKey: keys.student(id ?? ''),
    queryFn: () => getView<StudentView>(at('students', id ?? '')),
    enabled: id !== null,
  });

/** What erasing would come to; `called` are other names to look for. What was found before stays while more is looked for. */
export const useErasure = (id: string, called: readonly string[]) =>
  useQuery({
    queryKey: keys.erasure(id, called),
    queryFn: () =>
      getView<ErasureView>(
        `${at('students', id)}/erasure?${new URLSearchParams(called.map((name) => ['called', name]))}`,
      ),
    placeholderData: keepPreviousData,
  });

/** `null` asks for nothing. */
export const useCourse = (id: string | null) =>
  useQuery({
    queryKey: keys.course(id ?? ''),
    queryFn: () => getView<CourseView>(at('courses', id ?? '')),
    enabled: id !== null,
  });

export const useUnits = () =>
  useQuery({
    queryKey: keys.units,
    queryFn: () => getView<{ readonly units: readonly UnitRow[] }>('/api/units'),
  });

/** `null` asks for nothing; without a version, the newest. */
export const useUnit = (id: string | null, version?: number) =>
  useQuery({
    queryKey: keys.unit(id ?? '', version),
    queryFn: () =>
      getView<UnitView>(`${at('units', id ?? '')}${version === undefined ? '' : `?version=${version}`}`),
    enabled: id !== null,
  });

/** `null` asks for nothing. */
export const useCourseUnit = (id: string | null) =>
  useQuery({
    queryKey: keys.courseUnit(id ?? ''),
    queryFn: () => getView<CourseUnitCompareView>(at('course-units', id ?? '')),
    enabled: id !== null,
  });

export const useSkills = () =>
  useQuery({ queryKey: keys.skills, queryFn: () => getView<SkillMapView>('/api/skills') });

/** `null` asks for nothing. */
export const useTakes = (student: string | null) =>
  useQuery({
    queryKey: keys.takes(student ?? ''),
    queryFn: () => getView<TakesView>(`${at('students', student ?? '')}/takes`),
    enabled: student !== null,
  });

/** `null` asks for nothing. */
export const useTake = (id: string | null) =>
  useQuery({
    queryKey: keys.take(id ?? ''),
    queryFn: () => getView<TakeView>(at('takes', id ?? '')),
    enabled: id !== null,
  });

export const useTerm = () => useQuery({ queryKey: keys.term, queryFn: () => getView<TermView>('/api/term') });

export const useChanges = () =>
  useQuery({ queryKey: keys.changes, queryFn: () => getView<ChangesView>('/api/changes') });
