// Source: the open chord shapes of any beginner's guitar and ukulele book, from memory. The shape named must be our first
// choice, or where several are usual among the first three.
import { expect, test } from 'vitest';
import { type ChordVoicing, chordVoicings, parseChord } from '#music';

const guitar = `C x32010 | A x02220 | G 320003 | E 022100 | D xx0232 | Am x02210 | Em 022000 | Dm xx0231 | F 133211 |
  B7 x21202 | C7 x32310 | A7 x02020 | E7 020100 | D7 xx0212 | G7 320001 | Cmaj7 x32000 | Amaj7 x02120 | Dmaj7 xx0222 |
  Gmaj7 320002 | Emaj7 021100 | Am7 x02010 | Em7 020000 | Dm7 xx0211 | Dsus4 xx0233 | Asus2 x02200 | Dsus2 xx0230 |
  F#m 244222 | Fm 133111 | B x24442 | D/F# 200232`;
const guitarAmongThree = `Bm x24432 | Fmaj7 xx3210 | Asus4 x02230 | Esus4 022200 | Gm 355333 | Bb x13331 | C#m x46654`;
const ukulele = `C 0003 | G 0232 | F 2010 | Am 2000 | A 2100 | D 2220 | Dm 2210 | G7 0212 | C7 0001 | A7 0100 | E7 1202 |
  Bb 3211 | D7 2223 | Gm 0231 | B7 2322 | Cm 0333 | Eb 0331 | Fm 1013 | Bm 4222 | Cmaj7 0002 | Am7 0000 | Dm7 2213 |
  Em7 0202 | Gm7 0211 | Bb7 1211 | F#m 2120`;
const ukuleleAmongThree = `Em 0432 | E 4442 | F7 2310 | Fmaj7 2413`;

const rows = (text: string) =>
  text.split('|').map((row) => {
    const [symbol = '', shape = ''] = row.trim().split(' ');
    return { symbol, shape };
  });
const shapeOf = (voicing: ChordVoicing) => voicing.frets.map((fret) => fret ?? 'x').join('');
const shapes = (id: 'guitar' | 'ukulele', symbol: string) => {
  const chord = parseChord(symbol);
  return chord.ok ? chordVoicings(id, chord.value, 3).map(shapeOf) : [];
};

test.each(rows(guitar))('guitar $symbol is $shape', ({ symbol, shape }) =>
  expect(shapes('guitar', symbol)[0]).toBe(shape),
);
test.each(rows(guitarAmongThree))('guitar $symbol offers $shape', ({ symbol, shape }) =>
  expect(shapes('guitar', symbol)).toContain(shape),
);
test.each(rows(ukulele))('ukulele $symbol is $shape', ({ symbol, shape }) =>
  expect(shapes('ukulele', symbol)[0]).toBe(shape),
);
test.each(rows(ukuleleAmongThree))('ukulele $symbol offers $shape', ({ symbol, shape }) =>
  expect(shapes('ukulele', symbol)).toContain(shape),
);

// From memory of the same books: which finger goes where.
test.each([
  { symbol: 'C', fingers: '-32-1-' },
  { symbol: 'G', fingers: '21---3' },
  { symbol: 'D', fingers: '---132' },
  { symbol: 'A', fingers: '--123-' },
  { symbol: 'E', fingers: '-231--' },
  { symbol: 'F', fingers: '134211' },
  { symbol: 'B7', fingers: '-213-4' },
])('guitar $symbol is fingered $fingers', ({ symbol, fingers }) => {
  const chord = parseChord(symbol);
  const first = chord.ok ? chordVoicings('guitar', chord.value, 1)[0] : undefined;
  expect(first?.fingers.map((finger) => finger ?? '-').join('')).toBe(fingers);
});
