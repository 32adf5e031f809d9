/** How long a lesson may be, in whole minutes. */
export const lessonLength = { least: 10, most: 240 } as const;

/** Whether a lesson may be so many minutes long. */
export const isLessonLength = (minutes: number): boolean =>
  Number.isInteger(minutes) && minutes >= lessonLength.least && minutes <= lessonLength.most;
