// Holes covered and keys pressed on woodwind and recorder.

import type { HoleFingering } from '../fingering/fingering.ts';
import type { InstrumentId } from '../instrument/instrument.ts';
import { type Drawing, disc, line, type Mark, ring, text } from './drawing.ts';
import {
  baritoneSaxKeys,
  bassClarinetKeys,
  bassoonHoles,
  bassoonKeys,
  clarinetHoles,
  clarinetKeys,
  fluteHoles,
  fluteKeys,
  type HoleRow,
  type KeyRow,
  oboeHoles,
  oboeKeys,
  recorderHoles,
  recorderKeys,
  saxophoneHoles,
  saxophoneKeys,
} from './hole-layout.data.ts';

interface Layout {
  readonly holes: readonly HoleRow[];
  readonly keys: readonly KeyRow[];
}

const flute: Layout = { holes: fluteHoles, keys: fluteKeys };
const oboe: Layout = { holes: oboeHoles, keys: oboeKeys };
const clarinet: Layout = { holes: clarinetHoles, keys: clarinetKeys };
const saxophone: Layout = { holes: saxophoneHoles, keys: saxophoneKeys };
const recorder: Layout = { holes: recorderHoles, keys: recorderKeys };
const layoutsById: Readonly<Partial<Record<InstrumentId, Layout>>> = {
  piccolo: flute,
  flute,
  oboe,
  cor_anglais: oboe,
  clarinet_bb: clarinet,
  clarinet_a: clarinet,
  bass_clarinet: { holes: clarinetHoles, keys: bassClarinetKeys },
  bassoon: { holes: bassoonHoles, keys: bassoonKeys },
  soprano_sax: saxophone,
  alto_sax: saxophone,
  tenor_sax: saxophone,
  baritone_sax: { holes: saxophoneHoles, keys: baritoneSaxKeys },
  recorder_descant: recorder,
  recorder_treble: recorder,
  recorder_tenor: recorder,
};

function holeMark([name, x, y]: HoleRow, fingering: HoleFingering): Mark {
  const r = name === 'T' ? 5 : 5.6;
  if (fingering.half.includes(name)) return { shape: 'half-circle', x, y, r, outline: 1.2 };
  return fingering.pressed.includes(name) ? disc(x, y, r + 0.6) : ring(x, y, r, 1.2);
}

function keyMarks([name, x, y, label]: KeyRow, fingering: HoleFingering): readonly Mark[] {
  const box = { shape: 'box', x, y } as const;
  if (!fingering.pressed.includes(name)) {
    return [{ ...box, width: 10, height: 4.6, corner: 2.3, fill: 'none', outline: 0.7 }];
  }
  const wide = label.length > 2 ? 19 : 17;
  return [
    { ...box, width: wide, height: 9.4, corner: 3, fill: 'ink', outline: 0 },
    text(x, y, 8.2, label, { ink: 'paper', bold: true }),
  ];
}

/** The diagram of a woodwind fingering; null for an instrument without holes. */
export function holeDiagram(id: InstrumentId, title: string, fingering: HoleFingering): Drawing | null {
  const layout = layoutsById[id];
  if (layout === undefined) return null;
  const lowest = Math.max(...layout.holes.map(([, , y]) => y), ...layout.keys.map(([, , y]) => y));
  const width = Math.max(...layout.holes.map(([, x]) => x + 10), ...layout.keys.map(([, x]) => x + 10));
  const hands = (layout.holes.find(([name]) => name === '3')?.[2] ?? 0) + 11;
  const pressed = [...fingering.pressed, ...fingering.half.map((name) => `half ${name}`)];
  return {
    width,
    height: lowest + 9,
    title,
    description: pressed.length === 0 ? 'Nothing pressed' : `Covered or pressed: ${pressed.join(', ')}`,
    marks: [
      line(26, hands, 38, hands, 0.8),
      ...layout.keys.flatMap((key) => keyMarks(key, fingering)),
      ...layout.holes.map((hole) => holeMark(hole, fingering)),
    ],
  };
}

/** Whether every hole and key a fingering names is in the instrument's diagram. */
export function isDrawable(id: InstrumentId, fingering: HoleFingering): boolean {
  const layout = layoutsById[id];
  const names = new Set([...(layout?.holes ?? []), ...(layout?.keys ?? [])].map(([name]) => name));
  return [...fingering.pressed, ...fingering.half].every((name) => names.has(name));
}
