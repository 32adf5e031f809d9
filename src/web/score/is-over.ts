import type { CourseView } from '#contract';

/** Whether a course's last day is past; until then it is taught and planned as any other. */
export const isOver = ({ ended, today }: Pick<CourseView, 'ended' | 'today'>): boolean =>
  ended !== null && ended < today;
