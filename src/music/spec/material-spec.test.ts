import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fieldsByKind, materialKinds, parseMaterialSpec } from './material-spec.ts';

const chart = '| Dm7 G7 | C |';
const minimal = materialKinds.map((kind) => ({
  kind,
  ...(fieldsByKind[kind]['chart']?.fallback === undefined && 'chart' in fieldsByKind[kind] ? { chart } : {}),
}));

test.each(minimal)('%j is enough; defaults are filled in, and read back to the same spec', (typed) => {
  const read = parseMaterialSpec(typed);
  if (!read.ok) throw new Error(read.error.message);
  expect(Object.keys(read.value).sort()).toEqual(['kind', ...Object.keys(fieldsByKind[typed.kind])].sort());
  expect(parseMaterialSpec(JSON.parse(JSON.stringify(read.value)))).toEqual(read);
});

test.each([
  [{}, '/kind', 'scale'],
  [{ kind: 'scales' }, '/kind', 'scale'],
  [{ kind: 'scale', octaves: 9 }, '/octaves', 4],
  [{ kind: 'scale', octaves: '2' }, '/octaves', 2],
  [{ kind: 'scale', octaves: 'five_note' }, '/octaves', 'five_notes'],
  [{ kind: 'scale', octave: 2 }, '/octave', 'octaves'],
  [{ kind: 'scale', scale: 'dorain' }, '/scale', 'dorian'],
  [{ kind: 'scale', start: 'H' }, '/start', 'fit'],
  [{ kind: 'scale', start: 'Bbb' }, '/start', 'B'],
  [{ kind: 'scale', fingerings: 'yes' }, '/fingerings', false],
  [{ kind: 'scale', tempo: 500 }, '/tempo', 300],
  [{ kind: 'rhythm', rests: 0.9 }, '/rests', 0.5],
  [{ kind: 'rhythm', values: ['crotchet', 'quaverr'] }, '/values/1', 'quaver'],
  [{ kind: 'rhythm', values: [] }, '/values', 'fit'],
  [{ kind: 'phrase', play: [2, 12] }, '/play/1', 8],
  [{ kind: 'line' }, '/chart', '| C |'],
  [{ kind: 'line', chart: '| Cmaj7 | Gmj7 |' }, '/chart', 'Gmaj7'],
  [{ kind: 'chart', chart, melody: 'C4:1 X4:1' }, '/melody', 'C4:1'],
  [{ kind: 'chart', chart: 7 }, '/chart', '| C |'],
])('%j: the fault is at %s, and the nearest is %j', (typed, at, nearest) => {
  const read = parseMaterialSpec(typed);
  expect(read).toMatchObject({ ok: false, error: { at, nearest } });
  if (!read.ok) expect(read.error.message.length).toBeGreaterThan(10);
});

test('whatever comes in, reading answers and never throws', () => {
  fc.assert(
    fc.property(
      fc.oneof(
        fc.anything(),
        fc.record({
          kind: fc.constantFrom(...materialKinds),
          chart: fc.string(),
          melody: fc.string(),
          start: fc.string(),
        }),
        fc.dictionary(
          fc.constantFrom('kind', 'octaves', 'values', 'play', '__proto__', 'constructor'),
          fc.anything(),
        ),
      ),
      (value) => {
        const read = parseMaterialSpec(value);
        return read.ok ? materialKinds.includes(read.value.kind) : read.error.message !== '';
      },
    ),
    { numRuns: 500, seed: 1 },
  );
});

test('a field is its own: nothing is borrowed from the language', () => {
  expect(parseMaterialSpec(JSON.parse('{"kind":"scale","constructor":1}'))).toMatchObject({
    error: { kind: 'UnknownField', at: '/constructor' },
  });
});
