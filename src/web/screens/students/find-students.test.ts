import { expect, test } from 'vitest';
import type { StudentRow } from '#contract';
import type { Id } from '#core';
import { findStudents } from './find-students.ts';

const row = (name: string, instrument: 'flute' | 'cello'): StudentRow => ({
  id: `student:${name.length}` as Id<'student'>,
  name,
  siblings: [],
  age: null,
  instruments: [{ instrument, name: instrument === 'flute' ? 'Flute' : 'Cello', stage: 'beginner' }],
  courses: [],
  next: null,
  left: null,
  here: true,
  pacePercent: null,
});
const all = [row('Zoë Lindqvist', 'flute'), row('Anna Óskarsdóttir', 'cello'), row('Bo', 'flute')];
const names = (text: string) => findStudents(all, text).map((s) => s.name);

test('finds by part of a name or instrument, accents and case aside', () => {
  expect(names('zoe')).toEqual(['Zoë Lindqvist']);
  expect(names('OSKAR cello')).toEqual(['Anna Óskarsdóttir']);
  expect(names('flute')).toEqual(['Zoë Lindqvist', 'Bo']);
  expect(names('flute anna')).toEqual([]);
  expect(names('  ')).toHaveLength(3);
});
