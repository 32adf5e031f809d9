import { expect, test } from 'vitest';
import { viewChanges, viewCourse, viewDay, viewLesson, viewStudio } from '#studio';
import { anaCourse, day, openCourseStudio } from '../testing/open-studio.contract.ts';

test('smoke', async () => {
  const studio = await openCourseStudio();
  const lessons = await studio.lessons(anaCourse);
  const first = lessons[0];
  if (!first) return;
  const segs = await studio.segments(first.id);
  for (const s of segs)
    if (s.kind === 'work')
      await studio.done({ type: 'segment.log', segment: s.id, seconds: 400, outcome: 'partly', share: null });
  const t = performance.now();
  await studio.done({ type: 'lesson.close', lesson: first.id, minutes: null });
  console.log(performance.now() - t);
  studio.setToday('2026-09-14');
  console.log(
    JSON.stringify(await studio.store.read((r) => viewDay(r, day('2026-09-14'), studio.outside())), null, 1),
  );
  console.log(JSON.stringify(await studio.store.read((r) => viewLesson(r, lessons[1]!.id)), null, 1));
  const c = await studio.store.read((r) => viewCourse(r, anaCourse, studio.outside()));
  console.log(JSON.stringify({ ...c, bars: c!.bars.slice(0, 2) }, null, 1));
  console.log(c?.bars.map((b) => (b.kind === 'rest' ? b.name : b.date)).join(' '));
  console.log(JSON.stringify(await studio.store.read((r) => viewChanges(r)), null, 1));
  console.log(JSON.stringify(await studio.store.read((r) => viewStudio(r, studio.outside())), null, 1));
});
