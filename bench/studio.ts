// A whole studio planned again: sixty students with three starter units each and twelve weekly lessons, when a holiday is
// put over one week. Measured through the real command, from the click to the committed rows in memory.

import type { Command } from '#contract';
import {
  createFixedClock,
  createId,
  createSeededRandom,
  type PlainDate,
  type PlainTime,
  present,
} from '#core';
import { stages } from '#planning';
import { readLibrary } from '#server';
import { createMemoryStore } from '#storage';
import { carryOut, coursePlanner } from '#studio';

const unitsByStage = [
  ['the-beat-in-your-feet', 'five-good-notes', 'one-note-is-enough'],
  ['questions-and-answers', 'from-sound-to-sign', 'between-the-beats'],
  ['a-whole-solo-from-a-small-idea', 'fast-and-easy', 'eyes-ahead'],
  ['through-the-changes', 'from-first-page-to-applause', 'fast-and-easy'],
] as const;

/** Prints the figures. */
export async function runStudioBench(students = 60): Promise<void> {
  const clock = createFixedClock('2026-09-07' as PlainDate);
  const random = createSeededRandom(11);
  const library = await readLibrary();
  if (!library.ok) throw new Error(library.error.message);
  const store = await createMemoryStore(clock);
  const outside = { clock, random, planner: coursePlanner, starter: library.value };
  const send = async (command: Command) => {
    const done = await carryOut(store, { id: createId('change', random), command }, outside);
    if (!done.ok) throw new Error(`${command.type}: ${done.error.message}`);
    return done.value;
  };
  const date = (text: string) => text as PlainDate;
  await send({
    type: 'studio.found',
    name: 'Bench',
    teacher: '',
    timeZone: 'UTC',
    locale: 'en-GB',
    starterUnits: true,
  });
  await send({
    type: 'term.put',
    term: {
      id: createId('term', random),
      name: 'Term',
      starts: date('2026-09-07'),
      ends: date('2026-11-29'),
    },
  });
  for (let n = 0; n < students; n++) {
    const student = createId('student', random);
    const course = createId('course', random);
    const stage = present(stages[n % 4], 'a stage');
    const instrument = 'flute';
    await send({
      type: 'student.add',
      student: {
        id: student,
        name: `Student ${n + 1}`,
        born: null,
        birthYear: 2026 - (8 + ((n * 7) % 50)),
        instruments: [{ instrument, stage }],
        family: null,
        contacts: [],
        note: '',
        since: date('2026-09-01'),
      },
    });
    const strands = [0, 1, 2].map((i) => ({
      id: createId('strand', random),
      name: `Strand ${i + 1}`,
      ink: i as 0 | 1 | 2,
      priority: i + 1,
      deadline: null,
    }));
    await send({
      type: 'course.open',
      course: { id: course, student, group: null, instrument, stage, strands },
      slot: {
        id: createId('slot', random),
        weekday: ((n % 5) + 1) as 1 | 2 | 3 | 4 | 5,
        time: `${String(10 + (n % 9))}:00` as PlainTime,
        minutes: n % 3 === 0 ? 45 : 30,
        starts: date('2026-09-07'),
        ends: null,
      },
    });
    for (const [i, unit] of (unitsByStage[n % 4] ?? []).entries())
      await send({
        type: 'courseUnit.give',
        seen: (await store.read((r) => r.get('course', course)))?.revision ?? 0,
        course,
        courseUnit: createId('course-unit', random),
        unit: present(
          library.value.units.find((u) => u.id === `unit:${unit}`),
          unit,
        ).id,
        strand: present(strands[i], 'a strand').id,
      });
  }
  const started = performance.now();
  const before = process.cpuUsage();
  const reply = await send({
    type: 'holiday.putMany',
    holidays: [
      {
        id: createId('holiday', random),
        name: 'A week off',
        starts: date('2026-10-12'),
        ends: date('2026-10-18'),
        source: '',
      },
    ],
  });
  const used = process.cpuUsage(before);
  console.log(`
A studio of ${students} planned again after a week's holiday (${reply.courses.length} courses, one command)
  ${((performance.now() - started) / 1000).toFixed(2)} s on the clock, ${((used.user + used.system) / 1e6).toFixed(2)} s of processor`);
  await store.close();
}
