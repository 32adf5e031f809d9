import { expect, test } from 'vitest';
import { anaCourse, openCourseStudio } from '../testing/open-studio.contract.ts';

test('smoke', async () => {
  const studio = await openCourseStudio();
  const lessons = await studio.lessons(anaCourse);
  console.log(lessons.map((l) => l.date).join(' '));
  for (const l of lessons.slice(0, 4)) {
    const segs = await studio.segments(l.id);
    console.log(
      l.date,
      segs.map((s) => `${s.kind}:${s.title}:${s.minutes}${s.completes ? '!' : ''}`).join(' | '),
    );
  }
  expect(lessons.length).toBe(14);
  const first = lessons[0];
  if (!first) return;
  const segs = await studio.segments(first.id);
  for (const s of segs)
    if (s.kind === 'work')
      console.log(
        await studio.done({
          type: 'segment.log',
          segment: s.id,
          seconds: 400,
          outcome: 'partly',
          share: null,
        }),
      );
  const t = performance.now();
  console.log(await studio.done({ type: 'lesson.close', lesson: first.id, minutes: null }));
  console.log(performance.now() - t);
  const c = await studio.store.read((r) => r.get('course', anaCourse));
  console.log(JSON.stringify(c?.moved, null, 1));
  for (const l of lessons.slice(0, 5)) {
    const segs = await studio.segments(l.id);
    console.log(
      l.date,
      segs.map((s) => `${s.kind}:${s.title}:${s.minutes}${s.completes ? '!' : ''}`).join(' | '),
    );
  }
});
