import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StudentImportPreview } from '#contract';
import type { PlainDate } from '#core';
import { id } from '../testing/open-studio.contract.ts';
import { previewStudents } from './preview-students.ts';
import { findDayOrder, readAge, readBorn } from './read-born.ts';
import { readInstruments } from './read-instruments.ts';
import { readMinutes, readTime, readWeekday } from './read-slot.ts';

const today = '2026-09-07' as PlainDate;

function preview(text: string): StudentImportPreview {
  const read = previewStudents({ text, today }, [
    { id: id('student', 'ana'), name: 'Ana Ferreira', family: null, contacts: [] },
  ]);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
}
const refusal = (text: string) => {
  const read = previewStudents({ text, today }, []);
  return read.ok ? '' : read.error.message;
};
const faultsOf = (text: string) =>
  preview(text).rows.map((row) => row.faults.map((f) => f.message).join(' '));

describe('[R-CSV-1] headings are recognised in five languages; commas, semicolons and tabs are told apart', () => {
  test.each([
    [
      'Name,Date of birth,Instrument,Level,Parent,E-mail',
      ['name', 'born', 'instrument', 'stage', 'contactName', 'email'],
    ],
    [
      'Vorname;Nachname;Geburtsdatum;Instrument;Wochentag;Uhrzeit',
      ['name', 'name', 'born', 'instrument', 'weekday', 'time'],
    ],
    ['Nom\tPrénom\tÂge\tTéléphone\tDurée', ['name', 'name', 'age', 'phone', 'minutes']],
    ['Nome;Data de nascimento;Encarregado de educação;Telemóvel', ['name', 'born', 'contactName', 'phone']],
    ['Student,Parent / Guardian,Lesson day & time,Length', ['name', 'contactName', 'weekday', 'minutes']],
    ['Nombre;Apellidos;Año de nacimiento;Móvil;Shoe size', ['name', 'name', 'birthYear', 'phone', null]],
  ])('%s', (heading, mapping) => {
    expect(preview(`${heading}\nx`).mapping).toEqual(mapping);
  });

  test('first and last name are joined, the first one first', () => {
    expect(preview('Nachname;Vorname\nSilva;Rui').rows[0]?.student?.name).toBe('Rui Silva');
  });

  test('a byte order mark and a delimiter said by the file are no part of it', () => {
    expect(preview('\uFEFFsep=;\nName;Age\nRui;9').rows[0]).toMatchObject({
      line: 3,
      student: { name: 'Rui', birthYear: 2017 },
    });
  });

  test('the columns may be chosen by hand', () => {
    const read = previewStudents(
      { text: 'Who,Plays\nRui,Cello', mapping: ['name', 'instrument'], today },
      [],
    );
    expect(read.ok && read.value.rows[0]?.student).toMatchObject({
      name: 'Rui',
      instruments: [{ instrument: 'cello' }],
    });
  });
});

describe('[R-CSV-2] a file in the wrong form is refused as a whole, with what to do', () => {
  test.each([
    ['', 'empty'],
    ['Name', 'only one line'],
    ['N\u0000a\u0000m\u0000e', 'UTF-16'],
    ['Name\nJos\uFFFD', 'Latin-1'],
    ['Name\nMÃ¼ller', 'converted twice'],
    ['PK\u0003\u0004', 'spreadsheet file'],
    ['Name,Age\n"Rui,9\nAna,8', 'quotation mark'],
    [`Name\n${Array.from({ length: 501 }, (_, i) => `S${i}`).join('\n')}`, '501 students'],
  ])('%#', (text, said) => expect(refusal(text)).toContain(said));
});

describe('[R-CSV-3] each row makes a student or says in words what is wrong with it', () => {
  test('a full row', () => {
    const { rows } = preview(
      'Name,Born,Instrument,Stage,Parent,Relation,Phone,Email,Notes,Day,Time,Minutes\n' +
        'Rui Silva,2015-04-30,alto sax,Elementary,Marta Silva,mother,+351 210 000 000,marta@example.org,"Left-handed, shy",Tue,4:30 pm,45',
    );
    expect(rows[0]).toMatchObject({
      line: 2,
      faults: [],
      twin: null,
      student: {
        name: 'Rui Silva',
        born: '2015-04-30',
        birthYear: null,
        instruments: [{ instrument: 'alto_sax', stage: 'elementary' }],
        contacts: [
          { name: 'Marta Silva', relation: 'mother', phone: '+351 210 000 000', email: 'marta@example.org' },
        ],
        note: 'Left-handed, shy',
        slot: { weekday: 2, time: '16:30', minutes: 45 },
      },
    });
  });

  test.each([
    ['Name,Age\n,9', 'name is missing'],
    ['Age\n9', 'Choose the column'],
    ['Name,Age\nRui,nine', 'no age'],
    ['Name,Instrument\nRui,kazoo', 'no instrument we know'],
    ['Name,Instrument\nRui,sax', 'soprano, alto, tenor or baritone'],
    ['Name,Level\nRui,grade 3', 'no stage'],
    ['Name,Email\nRui,rui at home', 'no e-mail'],
    ['Name,Phone\nRui,ask', 'no phone number'],
    ['Name,Day\nRui,Tuesday', 'weekday has no time'],
    ['Name,Time\nRui,16:00', 'time has no weekday'],
    ['Name,Born,Age\nRui,2015-04-30,30', 'does not agree'],
    ['Name,Age\nRui,9,Porto', 'quotation marks'],
  ])('%j', (text, said) => {
    expect(faultsOf(text)[0]).toContain(said);
    expect(preview(text).rows[0]?.student).toBeNull();
  });

  // Common practice, no source: how teachers shorten and shade the stages in their lists.
  test.each([
    ['Beg', 'beginner'],
    ['absolute beginner', 'beginner'],
    ['Late Beginner', 'beginner'],
    ['elem.', 'elementary'],
    ['Int.', 'intermediate'],
    ['early-intermediate', 'intermediate'],
    ['Upper Int', 'intermediate'],
    ['Adv', 'advanced'],
    ['early', 'elementary'],
  ])('the stage %s', (cell, stage) => {
    const [row] = preview(`Name,Instrument,Level\nRui,cello,${cell}`).rows;
    expect(row?.student?.instruments).toEqual([{ instrument: 'cello', stage }]);
  });

  test.each([
    ['Mon 3:30 PM', { weekday: 1, time: '15:30', minutes: 30 }],
    ['Tuesdays at 4pm', { weekday: 2, time: '16:00', minutes: 30 }],
    ['Thu. 16:30-17:15', { weekday: 4, time: '16:30', minutes: 45 }],
    ['Fri, 4:30 – 5:30 pm', { weekday: 5, time: '16:30', minutes: 60 }],
    ['Sat 11:30-12:15 pm', { weekday: 6, time: '11:30', minutes: 45 }],
    ['TBD', null],
    ['?', null],
  ])('day and time in one cell: %s', (cell, slot) => {
    const [row] = preview(`Name,Day & time\nRui,"${cell}"`).rows;
    expect(row?.faults).toEqual([]);
    expect(row?.student?.slot).toEqual(slot);
  });

  test('what is said of a day and time in one cell stands at that cell', () => {
    const faults = (cell: string) => preview(`Name,Day & time\nRui,${cell}`).rows[0]?.faults;
    expect(faults('every other Fri 6pm')).toMatchObject([{ column: 'weekday' }]);
    expect(faults('Mon 4:30-5:15')).toMatchObject([
      { column: 'weekday', message: expect.stringContaining('morning or afternoon') },
    ]);
    // The column of its own says how long it is.
    expect(preview('Name,When,Length\nRui,x,30').mapping).toEqual(['name', 'weekday', 'minutes']);
    const [row] = preview('Name,When,Length\nRui,Mon 16:30-17:15,60').rows;
    expect(row?.student?.slot).toEqual({ weekday: 1, time: '16:30', minutes: 60 });
  });

  test('all faults of a row are told at once', () => {
    expect(preview('Name,Age,Email\n,x,y').rows[0]?.faults.map((f) => f.column)).toEqual([
      'name',
      'age',
      'email',
    ]);
  });

  test('the same name twice in the file, and a twin in the studio', () => {
    const { rows } = preview('Name\nRui\nrui\nAna Ferreira');
    expect(rows[1]?.faults[0]?.message).toContain('row 2 already');
    expect(rows[2]?.twin).toBe('student:ana');
  });

  test('what looks like a formula is text, and its guarding apostrophe goes', () => {
    const { rows } = preview(`Name,Notes,Phone\n"'=SUM(A1)",'-x,'+351 2`);
    expect(rows[0]?.student).toMatchObject({ name: '=SUM(A1)', note: '-x', contacts: [{ phone: '+351 2' }] });
  });
});

describe('[R-CSV-4] a date that may be read two ways is asked about, unless its column settles it', () => {
  test.each([
    ['2015-04-30', '2015-04-30'],
    ['30.4.2015', '2015-04-30'],
    ['04.05.2015', '2015-05-04'],
    ['30/04/2015', '2015-04-30'],
    ['04/30/2015', '2015-04-30'],
    ['04/04/2015', '2015-04-04'],
    ['30 April 2015', '2015-04-30'],
    ['April 30, 2015', '2015-04-30'],
    ['30. März 2015', '2015-03-30'],
    ['30 de abril de 2015', '2015-04-30'],
    ['1er août 2015', '2015-08-01'],
    ['2015-04-30 00:00:00', '2015-04-30'],
  ])('%s', (cell, date) => expect(readBorn(cell, null, today)).toEqual({ ok: true, value: { date } }));

  test('a year alone is a year', () =>
    expect(readBorn('2015', null, today)).toEqual({ ok: true, value: { year: 2015 } }));

  test.each([
    ['03/04/2015', '3 April 2015 or 4 March 2015'],
    ['03/04/15', 'two figures'],
    ['31/04/2015', 'no day that exists'],
    ['42005', "spreadsheet's number"],
    ['2031-01-01', 'future'],
    ['1815-01-01', 'no day that exists'],
    ['1905-01-01', '121 years old'],
    ['yesterday', 'no date'],
  ])('%s', (cell, said) => {
    const read = readBorn(cell, null, today);
    expect(read.ok ? '' : read.error).toContain(said);
  });

  test('one clear date settles its column; two that disagree settle nothing', () => {
    expect(preview('Name,Born\nRui,03/04/2015\nEva,25/12/2014').rows[0]?.student?.born).toBe('2015-04-03');
    expect(findDayOrder(['25/12/2014', '12/25/2014'])).toBeNull();
  });

  test('ages', () => {
    for (const cell of ['9', '9 years', '9½', '9.5', '9 ans', '9 anos'])
      expect(readAge(cell, today), cell).toEqual({ ok: true, value: { year: 2017 } });
    for (const cell of ['1', '200', '-3', '9 to 10']) expect(readAge(cell, today).ok, cell).toBe(false);
  });
});

describe('[R-CSV-5] instruments, days, times and lengths as people write them', () => {
  test.each([
    ['alto sax', ['alto_sax']],
    ['Bb trumpet', ['trumpet_bb']],
    ['B♭ Trumpet', ['trumpet_bb']],
    ['recorder', ['recorder_descant']],
    ['Blockflöte', ['recorder_descant']],
    ['Violon', ['violin']],
    ['Violão', ['guitar']],
    ['Guitarra clássica', ['guitar']],
    ['Flute / Piano', ['flute', 'piano']],
    ['Clarinet in B flat', ['clarinet_bb']],
    ['french horn', ['horn_f']],
  ])('%s', (cell, ids) => {
    const read = readInstruments(cell, 30);
    expect(read.ok ? read.value : []).toEqual(ids);
  });

  test("a child sings with a child's voice, a grown-up is asked which", () => {
    expect(readInstruments('Singing', 9)).toEqual({ ok: true, value: ['voice_child'] });
    expect(readInstruments('Singing', 30).ok).toBe(false);
  });

  test.each([
    ['Monday', 1],
    ['tue', 2],
    ['Mittwoch', 3],
    ['jeudi', 4],
    ['Sexta-feira', 5],
    ['sábado', 6],
    ['Domingo', 7],
    ['Di.', 2],
    ['Dimanche', 7],
    ['Dienstag', 2],
    ['Donnerstag', 4],
    ['mercredi', 3],
    ['miércoles', 3],
    ['Samstag', 6],
    ['Sonntag', 7],
    ['quarta', 3],
    ['martes', 2],
  ])('%s', (cell, weekday) => expect(readWeekday(cell)).toEqual({ ok: true, value: weekday }));

  test.each([
    ['16:00', '16:00'],
    ['4pm', '16:00'],
    ['4.30 pm', '16:30'],
    ['16h30', '16:30'],
    ['16h', '16:00'],
    ['16.15', '16:15'],
    ['9', '09:00'],
    ['12 am', '00:00'],
    ['17:30 Uhr', '17:30'],
    ['16:00:00', '16:00'],
  ])('%s', (cell, time) => expect(readTime(cell)).toEqual({ ok: true, value: time }));

  test.each(['25:00', '4', '4:30', 'noon', '13 pm', '4p'])('%s is asked about', (cell) =>
    expect(readTime(cell).ok).toBe(false),
  );

  test.each([
    ['45', 45],
    ['45 min', 45],
    ['1 h', 60],
    ["30'", 30],
  ])('%s', (cell, minutes) => expect(readMinutes(cell)).toEqual({ ok: true, value: minutes }));
});

test('any file: an answer, never a crash; every row either a student or faults', () => {
  const cell = fc.oneof(
    fc.string({ maxLength: 12 }),
    fc.constantFrom('Name', 'Born', '"', ',', ';', '\n', '03/04/2015', "'=1+1", 'ß', 'piano'),
  );
  fc.assert(
    fc.property(fc.array(fc.array(cell, { maxLength: 5 }), { maxLength: 8 }), (rows) => {
      const read = previewStudents(
        { text: `Name,Born,Time\n${rows.map((r) => r.join(',')).join('\n')}`, today },
        [],
      );
      if (read.ok)
        for (const row of read.value.rows) expect(row.student === null).toBe(row.faults.length > 0);
    }),
    { numRuns: 500, seed: 4180 },
  );
});
