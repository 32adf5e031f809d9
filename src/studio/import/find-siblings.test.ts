import { expect, test } from 'vitest';
import type { PlainDate } from '#core';
import { id } from '../testing/open-studio.contract.ts';
import type { KnownStudent } from './find-siblings.ts';
import { previewStudents } from './preview-students.ts';

const contact = (name: string, phone = '') => ({ name, relation: '', phone, email: '' });
const here = (name: string, more: Partial<KnownStudent> = {}): KnownStudent => ({
  id: id('student', name.split(' ')[0]?.toLowerCase() ?? ''),
  name,
  family: null,
  contacts: [],
  ...more,
});

function found(text: string, existing: readonly KnownStudent[] = []) {
  const read = previewStudents({ text, today: '2026-09-07' as PlainDate }, existing);
  if (!read.ok) throw new Error(read.error.message);
  return read.value.siblings;
}

test.each(['Family', 'Sibling of', 'Familie', 'Geschwister', 'Fratrie', 'Família', 'Hermanos'])(
  'a column named %s says who belongs together',
  (heading) => {
    expect(found(`Name,${heading}\nAna Reis,Reis\nBo Dahl,Dahl\nCleo Reis,reis`)).toEqual([
      { lines: [2, 4], here: [], family: null, why: 'column' },
    ]);
  },
);

test('the column may name the sibling, in the file or here already', () => {
  expect(found('Name,Sibling of\nAna Reis,\nCleo Reis,Ana Reis')).toMatchObject([{ lines: [2, 3] }]);
  const ana = here('Ana Reis', { family: id('family', 'reis') });
  expect(found('Name,Sibling of\nCleo Moss,ana reis', [ana])).toEqual([
    { lines: [2], here: [{ id: ana.id, name: 'Ana Reis' }], family: 'family:reis', why: 'column' },
  ]);
  expect(found('Name,Siblings\nAna Reis,"Bo Reis, Cleo Reis"\nBo Reis,\nCleo Reis,')).toMatchObject([
    { lines: [2, 3, 4] },
  ]);
});

test('a column that only says yes or no names nobody', () => {
  expect(found('Name,Siblings\nAna Reis,yes\nBo Dahl,yes\nCleo Reis,no\nDag Moe,no')).toEqual([]);
});

// The same surname and the same contact: common practice, no source.
test.each([
  ['the same telephone, however it is written', '+44 20 7946 0018', '0044 20 79460018', true],
  ['another telephone', '020 7946 0018', '020 7946 0019', false],
])('the same surname and %s', (_, one, other, are) => {
  expect(found(`Name,Phone\nAna Reis,${one}\nCleo Reis,${other}`)).toEqual(
    are ? [{ lines: [2, 3], here: [], family: null, why: 'contact' }] : [],
  );
});

test('the same contact without the surname is none, nor the surname alone; two mothers of one name are two', () => {
  expect(found('Name,Phone\nAna Reis,0123\nCleo Moss,0123')).toEqual([]);
  expect(found('Name,Age\nAna Reis,9\nCleo Reis,11')).toEqual([]);
  expect(found('Name,Parent\nAna Reis,Maria Reis\nCleo Reis,maria reis')).toHaveLength(1);
  expect(found('Name,Parent,Phone\nAna Reis,Maria Reis,0123\nCleo Reis,Maria Reis,0456')).toEqual([]);
  expect(found('Name,Phone\nAna,0123\nCleo,0123')).toEqual([]);
});

test('a row may be a sibling of a student who is here, but those here are not asked about among themselves', () => {
  const ana = here('Ana Reis', { contacts: [contact('Maria Reis', '0123')] });
  const cleo = here('Cleo Reis', { contacts: [contact('Maria Reis', '0123')] });
  expect(found('Name,Phone\nDag Reis,0123', [ana])).toMatchObject([{ lines: [2], here: [{ id: ana.id }] }]);
  // Both rows are here already: the file is read a second time.
  expect(found('Name,Phone\nAna Reis,0123\nCleo Reis,0123', [ana, cleo])).toEqual([]);
});

test('of whom the file speaks itself, nothing is guessed; a row with a fault is nobody’s sibling', () => {
  expect(found('Name,Family,Phone\nAna Reis,A,0123\nCleo Reis,B,0123')).toEqual([]);
  expect(found('Name,Family,Age\nAna Reis,Reis,9\nCleo Reis,Reis,old')).toEqual([]);
});
