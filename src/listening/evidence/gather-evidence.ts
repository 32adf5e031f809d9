// All rows of evidence on one take. What cannot be relied on is told as not heard; nothing here is a mark.

import type { Problem } from '../notes/problem.ts';
import { type DynamicsRow, hearDynamics } from './dynamics.ts';
import type { EvidenceInput } from './evidence-input.ts';
import { couldNotHear } from './figure.ts';
import { hearIntonation, type IntonationRow } from './intonation.ts';
import { hearMotifs, type MotifsRow } from './motifs.ts';
import { hearNoteValues, type NoteValuesRow } from './note-values.ts';
import { hearNotesChosen, type NotesChosenRow } from './notes-chosen.ts';
import { hearPhrases, type PhrasesRow } from './phrases.ts';
import { hearSyncopation, type SyncopationRow } from './syncopation-row.ts';
import { hearTiming, type TimingRow } from './timing.ts';
import { hearTone, type ToneRow } from './tone.ts';

export interface Evidence {
  readonly phrases: PhrasesRow;
  readonly noteValues: NoteValuesRow;
  readonly syncopation: SyncopationRow;
  readonly notesChosen: NotesChosenRow;
  readonly timing: TimingRow;
  readonly intonation: IntonationRow;
  readonly tone: ToneRow;
  readonly dynamics: DynamicsRow;
  readonly motifs: MotifsRow;
}
export type EvidenceName = keyof Evidence;

/** The rows in the order they are told. */
export const evidenceNames = [
  'phrases',
  'noteValues',
  'syncopation',
  'notesChosen',
  'timing',
  'intonation',
  'tone',
  'dynamics',
  'motifs',
] as const satisfies readonly EvidenceName[];

/** Below this the notes lie on the grid hardly better than by chance, and the rhythm is not told. */
const leastFit = 0.2;

/** Gathers every row. `problems` are what stood in the way of hearing. */
export function gatherEvidence(input: EvidenceInput, problems: readonly Problem[]): Evidence {
  const nothing = findStopper(problems, input);
  if (nothing !== null) return everyRow(nothing);
  const fits = input.alignment !== null && input.alignment.fit >= leastFit;
  const known = fits ? input : { ...input, alignment: null };
  const clipped = problems.find((problem) => problem.kind === 'Clipped');
  const loudBacking = problems.some((problem) => problem.kind === 'BackingTooLoud');
  const loudNoise = problems.some((problem) => problem.kind === 'MostlyNoise');
  return {
    phrases: hearPhrases(known),
    noteValues: hearNoteValues(known),
    syncopation: hearSyncopation(known),
    notesChosen: hearNotesChosen(known),
    timing: hearTiming(known),
    intonation: hearIntonation(known),
    tone: clipped
      ? couldNotHear('The recording is cut off at its loudest: record again with the level lower.')
      : loudBacking || loudNoise
        ? couldNotHear('Too much sounds beside the playing to hear its tone.')
        : hearTone(known),
    dynamics: clipped
      ? couldNotHear('The recording is cut off at its loudest: record again with the level lower.')
      : hearDynamics(known),
    motifs: hearMotifs(known),
  };
}

function everyRow(reason: string): Evidence {
  const row = couldNotHear(reason);
  return {
    phrases: row,
    noteValues: row,
    syncopation: row,
    notesChosen: row,
    timing: row,
    intonation: row,
    tone: row,
    dynamics: row,
    motifs: row,
  };
}

/** Why nothing at all can be relied on; null when something can. */
function findStopper(problems: readonly Problem[], input: EvidenceInput): string | null {
  for (const problem of problems)
    switch (problem.kind) {
      case 'TooShort':
        return 'The recording is too short.';
      case 'TooQuiet':
        return 'The recording is silent, or too quiet to hear notes in.';
      case 'RateUnusable':
        return 'The recording has a sample rate that cannot be read.';
      case 'MoreThanOneVoice':
        return 'More than one voice sounds: record one player alone, and the backing through headphones.';
      case 'SpeechLike':
        return 'It sounds like speech more than like playing.';
      case 'MostlyNoise':
        if (input.notes.length < 4) return 'Hardly anything but noise was heard.';
        break;
      case 'Clipped':
      case 'BackingTooLoud':
      case 'OutsideRange':
        break;
    }
  return input.notes.length === 0 ? 'No notes were heard.' : null;
}
