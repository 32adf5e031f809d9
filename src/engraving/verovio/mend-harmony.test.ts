import { expect, test } from 'vitest';
import { present } from '#core';
import {
  barRest,
  type Chord,
  chordSymbol,
  createMetre,
  createScore,
  fifthsToKey,
  findInstrument,
  fraction,
  parseChord,
  part,
  partBar,
  scoreBar,
  scoreToMusicXml,
} from '#music';
import { engrave } from '../engrave.ts';

async function printed(chord: Chord | null): Promise<string> {
  const bar = partBar({ key: fifthsToKey(0, 'major'), chords: [chordSymbol(chord)] }, [barRest(fraction(1))]);
  const flute = part(present(findInstrument('flute'), 'a flute'), [bar]);
  const score = createScore({ bars: [scoreBar(1, createMetre(4, 4))], parts: [flute] });
  const pages = await engrave(scoreToMusicXml(score), {
    form: { widthMm: 120, mostHeightMm: null },
    heading: 'none',
  });
  if (!pages.ok) throw new Error(pages.error.message);
  const harm = /<g[^>]*class="harm"[\s\S]*?<\/g>/.exec(present(pages.value[0], 'a page').svg)?.[0] ?? '';
  return harm
    .replace(/<title[\s\S]*?<\/title>/g, '')
    .replace(/<[^>]*>|\s/g, '')
    .replaceAll('\uEA64', '♭') // SMuFL figbassFlat and figbassSharp
    .replaceAll('\uEA66', '♯');
}

test.each([
  ['C7b9', 'C7♭9'],
  ['C6/9', 'C6/9'],
  ['Cadd9', 'Cadd9'],
  ['Dmaj7#11/A', 'Dmaj7♯11/A'],
  ['F7alt', 'F7alt'],
])('%s is printed once', async (symbol, expected) => {
  const chord = parseChord(symbol);
  expect(chord.ok && (await printed(chord.value))).toBe(expected);
});

test('no chord is printed N.C.', async () => {
  expect(await printed(null)).toBe('N.C.');
});
