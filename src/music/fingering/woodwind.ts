// Woodwind and recorder: which holes and keys, from tables, and the registers that follow from them by rule.

import { present } from '#core';
import type { Instrument } from '../instrument/instrument.ts';
import { parsePitch, pitchToMidi } from '../pitch/pitch.ts';
import type { HoleFingering } from './fingering.ts';
import {
  bassoonTable,
  clarinetTable,
  fluteTable,
  oboeTable,
  recorderTable,
  saxophoneTable,
} from './woodwind.data.ts';

type Table = ReadonlyMap<number, readonly HoleFingering[]>;

function readFingering(text: string): HoleFingering {
  const pressed: string[] = [];
  const half: string[] = [];
  for (const word of text.split(' ').filter((w) => w !== '')) {
    if (word.startsWith('~')) half.push(word.slice(1));
    else if (/^T?\d*$/.test(word)) pressed.push(...word);
    else pressed.push(word);
  }
  return { kind: 'holes', pressed, half };
}

function readTable(rows: Readonly<Record<string, string>>): Map<number, readonly HoleFingering[]> {
  return new Map(
    Object.entries(rows).map(([note, text]) => [
      pitchToMidi(present(parsePitch(note), 'what the table holds')),
      text.split('/ ').map(readFingering),
    ]),
  );
}

/** Adds a register: each note from `low` to `high` sounds `up` semitones higher with one more key. */
function addRegister(
  table: Map<number, readonly HoleFingering[]>,
  low: number,
  high: number,
  up: number,
  key: string,
) {
  for (let midi = low; midi <= high; midi++) {
    const below = table.get(midi);
    if (below === undefined || table.has(midi + up)) continue;
    const more = key === '' ? [] : [key];
    table.set(
      midi + up,
      below.map((fingering) => ({ ...fingering, pressed: [...more, ...fingering.pressed] })),
    );
  }
}

const midiOf = (note: string): number => pitchToMidi(present(parsePitch(note), 'a note of this file'));

const recorder = readTable(recorderTable);
const treble: Table = new Map([...recorder].map(([midi, fingerings]) => [midi + 5, fingerings]));
const flute = readTable(fluteTable);
addRegister(flute, midiOf('E4'), midiOf('C#5'), 12, '');
const oboe = readTable(oboeTable);
const clarinet = readTable(clarinetTable);
// The register key opens the twelfth.
addRegister(clarinet, midiOf('E3'), midiOf('F4'), 19, 'R');
const bassClarinet = new Map(clarinet);
bassClarinet.set(midiOf('Eb3'), [readFingering('T123 456 E/B lowEb')]);
const saxophone = readTable(saxophoneTable);
addRegister(saxophone, midiOf('D4'), midiOf('C#5'), 12, 'oct');
const bassoon = readTable(bassoonTable);

const tablesById: Readonly<Record<string, Table>> = {
  piccolo: flute,
  flute,
  oboe,
  cor_anglais: oboe,
  clarinet_bb: clarinet,
  clarinet_a: clarinet,
  bass_clarinet: bassClarinet,
  bassoon,
  soprano_sax: saxophone,
  alto_sax: saxophone,
  tenor_sax: saxophone,
  baritone_sax: saxophone,
  recorder_descant: recorder,
  recorder_treble: treble,
  recorder_tenor: recorder,
};

/** Fingerings of a written key number, the usual first; empty when there is none we vouch for. */
export function woodwindFingerings(instrument: Instrument, midi: number): readonly HoleFingering[] {
  return tablesById[instrument.id]?.get(midi) ?? [];
}
