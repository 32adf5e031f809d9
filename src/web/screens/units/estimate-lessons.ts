// How many lessons a unit will take, before there is a student.

/** What settling in, recap and setting practice take of a lesson: common practice, no source. */
const aroundTheWork = 8;

/** Lessons of this length for so many usual minutes of work. `estimateLessons(45, 30)` → 3 */
export function estimateLessons(usualMinutes: number, lessonMinutes: number): number {
  return Math.ceil(usualMinutes / Math.max(1, lessonMinutes - aroundTheWork));
}
