// After a handler has done its work: each course it touched is planned again where needed, and its revision rises once.

import type { CommandReply } from '#contract';
import { type LibraryRecords, workDone } from '../course/assemble-course-input.ts';
import { accumulateMoves, currentMoves, loadLibrary, replanCourse } from '../course/replan-course.ts';
import type { CourseId } from '../record/records.ts';
import type { Desk } from './desk.ts';

/** With more courses than this waiting in one command, each is planned briskly. */
const fewCourses = 8;

/** Settles all courses in hand and says what became of them. */
export async function settleCourses(desk: Desk): Promise<CommandReply['courses']> {
  const courses: CommandReply['courses'][number][] = [];
  let library: LibraryRecords | null = null;
  const waiting = [...desk.inHand.values()].filter((c) => c.touched && c.replan).length;
  for (const [id, inHand] of desk.inHand) {
    const { before } = inHand;
    const row = inHand.touched ? await desk.tx.get('course', id) : null;
    if (row === null) continue;
    let { moved, plan } = row;
    let movedNow = 0;
    if (inHand.replan) {
      library ??= await loadLibrary(desk.tx);
      const { moves, facts } = await replanCourse(desk.tx, before, inHand, {
        planner: desk.outside.planner,
        library,
        today: desk.today,
        random: desk.outside.random,
        effort: waiting > fewCourses ? 'brisk' : 'full',
      });
      moved = currentMoves(accumulateMoves(row.moved, moves), desk.today, await taughtKeys(desk, id));
      movedNow = moves.length;
      plan = facts;
    }
    // Plans may have changed the row's plan-made fields only, never its revision; it counts once per command.
    const revision = before.course.revision + 1;
    await desk.tx.put('course', { ...row, moved, plan, revision });
    courses.push({ course: id, revision, moved: movedNow });
  }
  desk.inHand.clear();
  return courses;
}

/** Keys of the work that was taught; what was not reached keeps its key for the next plan. */
async function taughtKeys(desk: Desk, course: CourseId): Promise<ReadonlySet<string>> {
  const lessons = await desk.tx.list('lesson', { where: { course, status: 'taught' } });
  const taught = new Set(lessons.map((l) => l.id));
  const segments = await desk.tx.list('segment', { where: { course } });
  return new Set(segments.filter((s) => taught.has(s.lesson) && workDone(s).length > 0).map((s) => s.key));
}
