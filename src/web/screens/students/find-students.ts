// Finding a student by what a teacher remembers: part of a name, an instrument, without caring for accents.

import type { StudentRow } from '#contract';

const plain = (text: string) => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** The students whose name or instruments hold every word of the text, in the order given. */
export function findStudents(students: readonly StudentRow[], text: string): readonly StudentRow[] {
  const wanted = plain(text).split(/\s+/).filter(Boolean);
  if (wanted.length === 0) return students;
  return students.filter((student) => {
    const all = plain([student.name, ...student.instruments.map((i) => i.name)].join(' '));
    return wanted.every((word) => all.includes(word));
  });
}
