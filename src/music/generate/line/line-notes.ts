// The notes a line may use over a chord: its tones, its scale, and notes a semitone beside a chord tone that lead to it.

import { type Chord, chordTones, guideTones } from '../../chord/chord.ts';
import type { WrittenRange } from '../../instrument/instrument.ts';
import { transposePitch } from '../../pitch/interval.ts';
import {
  fifthsToName,
  formatPitch,
  nameToFifths,
  type PitchName,
  pitchClass,
  pitchToMidi,
  staffStep,
  type WrittenPitch,
  written,
} from '../../pitch/pitch.ts';
import { ladder } from '../sheet/ladder.ts';

export interface LineNote {
  readonly pitch: WrittenPitch;
  readonly midi: number;
  readonly step: number;
  /** `approach` notes lie outside the scale and lead by semitone to a chord tone. */
  readonly role: 'chord' | 'scale' | 'approach';
  readonly isGuide: boolean;
  readonly isRoot: boolean;
}

/** The same sound under a usual name: no double accidentals, and no C flat, F flat, E sharp or B sharp. */
export function usualPitch(pitch: WrittenPitch): WrittenPitch {
  return pitchNamedWithin(pitch, -6, 10);
}

/**
 * A chord tone as its chord spells it, the third of C sharp 7 as E sharp; double accidentals give way, and so do the odd
 * names of altered ninths and thirteenths.
 */
export function chordTonePitch(pitch: WrittenPitch, root: PitchName): WrittenPitch {
  const above = (staffStep(pitch) - staffStep({ ...root, octave: 0 })) % 7;
  return above % 2 === 0 ? pitchNamedWithin(pitch, -8, 12) : usualPitch(pitch);
}

/** The pitch, or its namesake in sound between two places on the line of fifths. */
function pitchNamedWithin(pitch: WrittenPitch, low: number, high: number): WrittenPitch {
  let fifths = nameToFifths(pitch);
  if (fifths >= low && fifths <= high) return pitch;
  while (fifths > high) fifths -= 12;
  while (fifths < low) fifths += 12;
  const name = fifthsToName(fifths);
  const midi = pitchToMidi(pitch);
  const near = [pitch.octave - 1, pitch.octave, pitch.octave + 1].map((octave) => ({ ...name, octave }));
  return written(near.find((p) => pitchToMidi(p) === midi) ?? pitch);
}

/** All notes in a range over a chord, lowest first; of two with one sound, the better placed one. */
export function lineNotes(
  chord: Chord,
  scale: readonly PitchName[],
  range: WrittenRange,
): readonly LineNote[] {
  const tones = chordTones(chord);
  const guides = new Set(guideTones(chord).map(pitchClass));
  const toneClasses = new Set(tones.map(pitchClass));
  const root = pitchClass(chord.root);
  const notes = new Map<number, LineNote>();
  const add = (pitch: WrittenPitch, role: LineNote['role']) => {
    const midi = pitchToMidi(pitch);
    if (notes.has(midi)) return;
    const isChord = role === 'chord';
    notes.set(midi, {
      pitch,
      midi,
      step: staffStep(pitch),
      role,
      isGuide: isChord && guides.has(pitchClass(pitch)),
      isRoot: isChord && pitchClass(pitch) === root,
    });
  };
  for (const { pitch } of ladder(tones, range)) add(chordTonePitch(pitch, chord.root), 'chord');
  for (const { pitch } of ladder(scale, range))
    if (!toneClasses.has(pitchClass(pitch))) add(usualPitch(pitch), 'scale');
  const low = pitchToMidi(range.low);
  const high = pitchToMidi(range.high);
  for (const { pitch } of ladder(tones, range)) {
    for (const away of [-1, 1]) {
      const beside = written(transposePitch(pitch, { diatonic: away, chromatic: away }));
      const midi = pitchToMidi(beside);
      if (midi >= low && midi <= high) add(usualPitch(beside), 'approach');
    }
  }
  return [...notes.values()].sort((a, b) => a.midi - b.midi);
}

/**
 * The pitches of a line, its approach notes spelled by where they go: to D from above as E flat, to E from below as D
 * sharp, whatever chord they stand over.
 */
export function spellResolutions(line: readonly LineNote[]): readonly WrittenPitch[] {
  return line.map((note, i) => {
    const target = line[i + 1];
    if (note.role !== 'approach' || target === undefined) return note.pitch;
    const away = note.midi - target.midi;
    if (Math.abs(away) !== 1) return note.pitch;
    return usualPitch(written(transposePitch(target.pitch, { diatonic: away, chromatic: away })));
  });
}

/** A key for what a chord allows, so that it is worked out once. */
export function chordKeyText(chord: Chord): string {
  return formatPitch({ ...chord.root, octave: 0 }) + chord.quality.id;
}
