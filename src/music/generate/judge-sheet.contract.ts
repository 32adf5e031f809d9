// What must hold of every sheet, read off its score alone.

import { chordTones } from '../chord/chord.ts';
import { qualityOf } from '../chord/quality.ts';
import { isInRange, rangeAtStage } from '../instrument/instrument.ts';
import { type Key, keyFifths, signatureAlters } from '../key/key.ts';
import {
  formatPitch,
  type PitchName,
  parsePitchName,
  pitchClass,
  type WrittenPitch,
} from '../pitch/pitch.ts';
import { scaleOf, spellScale } from '../scale/scale.ts';
import { findScoreFaults } from '../score/find-score-faults.ts';
import type { Score } from '../score/score.ts';
import type { SheetFor } from '../shape/student-shape.ts';
import type { Sheet } from './sheet/sheet.ts';

interface Heard {
  readonly pitch: WrittenPitch;
  readonly key: Key;
  readonly bar: number;
}

/** All notes of the student's parts (a teacher's bass is none of them), with the key they stand in. */
function notesOf(score: Score, student: SheetFor): readonly Heard[] {
  return score.parts
    .filter((part) => part.instrument.id === student.instrument.id && part.name !== 'Teacher')
    .flatMap((part) =>
      part.bars.flatMap((bar, b) =>
        bar.voices.flatMap((voice) =>
          voice.events.flatMap((event) =>
            event.kind === 'note'
              ? event.heads.map(({ pitch }) => ({ pitch, key: bar.key, bar: b + 1 }))
              : [],
          ),
        ),
      ),
    );
}

const same = (a: PitchName, b: PitchName) => a.letter === b.letter && a.alter === b.alter;

/** The tonic or root printed over the passage a bar belongs to. */
function labelledTonic(score: Score, bar: number): PitchName | null {
  const part = score.parts[0];
  for (let b = bar - 1; b >= 0; b--) {
    for (const direction of part?.bars[b]?.directions ?? []) {
      if (direction.kind !== 'words') continue;
      const match = /^([A-G][♭♯]?)/.exec(direction.text);
      if (match !== null) return parsePitchName(match[1] ?? '');
    }
  }
  return null;
}

/** Whether a note is spelled as its key, scale or chord has it. */
function isSpelled({ spec, score }: Sheet, { pitch, key, bar }: Heard): boolean {
  switch (spec.kind) {
    case 'scale': {
      const tonic = labelledTonic(score, bar);
      if (tonic === null) return false;
      const { steps } = scaleOf(spec.scale);
      const ids =
        spec.scale === 'melodic_minor' && spec.descent === 'classical'
          ? (['melodic_minor', 'natural_minor'] as const)
          : [spec.scale];
      const names = ids.flatMap((id) => spellScale(tonic, id));
      if (steps.length === 7) return names.some((name) => same(name, pitch));
      return Math.abs(pitch.alter) <= 1 && names.some((name) => pitchClass(name) === pitchClass(pitch));
    }
    case 'arpeggio': {
      const root = labelledTonic(score, bar);
      const tones = root === null ? [] : chordTones({ root, quality: qualityOf(spec.quality), bass: null });
      return tones.some((name) => same(name, pitch));
    }
    case 'reading':
    case 'rhythm': {
      const alters = signatureAlters(keyFifths(key));
      const plain = alters[pitch.letter];
      return pitch.alter === plain || (key.mode === 'minor' && pitch.alter === plain + 1);
    }
    case 'phrase':
    case 'line':
    case 'chart':
      return Math.abs(pitch.alter) <= (spec.kind === 'chart' && spec.melody !== null ? 2 : 1);
  }
}

/** What is wrong with a sheet; empty when it keeps every promise. */
export function sheetFaults(sheet: Sheet, student: SheetFor): readonly string[] {
  const faults = findScoreFaults(sheet.score).map(({ message }) => message);
  const range = rangeAtStage(student.instrument, student.stage);
  for (const heard of notesOf(sheet.score, student)) {
    const where = `${formatPitch(heard.pitch)} in bar ${heard.bar}`;
    if (!isInRange(range, heard.pitch)) faults.push(`${where} lies outside the range of the stage`);
    if (!isSpelled(sheet, heard)) faults.push(`${where} is not spelled as its key or chord has it`);
  }
  if (sheet.title === '') faults.push('no title');
  return faults;
}
