// music: pitch, key, scale, chord, chart, instrument, rhythm; a typed score and what it is written as.

export { type Stage, stages } from '#core';
export { arrange } from './backing/arrange.ts';
export type {
  ArrangedBar,
  ArrangedNote,
  ArrangedPart,
  Arrangement,
  BarRole,
  PartName,
  SoundingChord,
} from './backing/arrangement.ts';
export { arrangementToMidi } from './backing/arrangement-to-midi.ts';
export { backingFields, toneNames } from './backing/backing-fields.ts';
export {
  type BackingMaterial,
  backingToSpec,
  parseBackingMaterial,
} from './backing/backing-material.ts';
export { type BackingSpec, type ClickKind, createBackingSpec, humanLimits } from './backing/backing-spec.ts';
export type { BackingTune } from './backing/backing-tune.ts';
export { allClasses, bassClass } from './backing/chord-sound.ts';
export {
  barTicks,
  type Feel,
  type FeelId,
  feelById,
  feelIds,
  offBeatTick,
  swingRatioAt,
} from './backing/feel.ts';
export { fitBacking } from './backing/fit-backing.ts';
export { loopSpec, loopTicks } from './backing/loop-bars.ts';
export { chorusChart, readerChart, readsTransposed } from './backing/reader-chart.ts';
export { playsSameChords, scoreToBacking } from './backing/score-backing.ts';
export { type BarsOfChart, type SheetPlaces, sheetPlaces } from './backing/sheet-places.ts';
export { scoreToTune } from './backing/tune-part.ts';
export { movement } from './backing/voice-leading.ts';
export {
  type Chart,
  type ChartBar,
  type ChartChord,
  type RepeatMarks,
  unfoldRepeats,
} from './chart/chart.ts';
export { formatChart } from './chart/format-chart.ts';
export { type ChartUnreadable, parseChart } from './chart/parse-chart.ts';
export { chartKey, transposeChart } from './chart/transpose-chart.ts';
export {
  type Chord,
  type ChordUnreadable,
  chordTones,
  formatChord,
  guideTones,
  parseChord,
  transposeChord,
  voicingTones,
} from './chord/chord.ts';
export { suggestScales } from './chord/chord-scale.ts';
export {
  type ChordQuality,
  type ChordQualityId,
  findChordQuality,
  type KindDegree,
  listChordQualities,
} from './chord/quality.ts';
export { describeScore } from './describe/describe-score.ts';
export type { NoteNaming } from './describe/score-words.data.ts';
export { chordDiagram } from './diagram/chord-diagram.ts';
export type { Drawing, Ink, Mark } from './diagram/drawing.ts';
export { drawingToSvg } from './diagram/drawing-to-svg.ts';
export { keyboardDiagram, type MarkedKey } from './diagram/keyboard-diagram.ts';
export { noteDiagram } from './diagram/note-diagram.ts';
export {
  durationToValue,
  type NoteType,
  type NoteValue,
  noteTypes,
  type TupletRatio,
  typeDuration,
  valueDuration,
} from './duration/note-value.ts';
export { type ChordVoicing, chordVoicings, type VoicingBarre } from './fingering/chord-voicing.ts';
export {
  fingeringOf,
  fingerLine,
  isInOnePosition,
  sharedPosition,
} from './fingering/finger-line.ts';
export {
  type Fingering,
  type FingeringMarks,
  type FingeringOptions,
  fingeringMarks,
  type HoleFingering,
  type KeyboardFingering,
  type NoteFingering,
  type SlideFingering,
  type StringFinger,
  type StringFingering,
  type ValveFingering,
} from './fingering/fingering.ts';
export { compare, type Fraction, formatFraction, fraction, minus, plus, times } from './fraction/fraction.ts';
export { createSheet } from './generate/create-sheet.ts';
export type { ShapingNote, Sheet, SheetRefused } from './generate/sheet/sheet.ts';
export { comfortableKeys } from './instrument/comfortable-keys.ts';
export {
  type Clef,
  findInstrument,
  fullRange,
  type Instrument,
  type InstrumentFamily,
  type InstrumentId,
  isInRange,
  listInstruments,
  openStrings,
  rangeAtStage,
  soundingToWritten,
  transpositionOf,
  type WrittenRange,
  writtenToSounding,
} from './instrument/instrument.ts';
export {
  fifthsToKey,
  formatKey,
  type Key,
  keyFifths,
  parseKey,
  signatureAlters,
  transposeKey,
} from './key/key.ts';
export {
  keyEvent,
  metreEvent,
  midiFile,
  type TrackEvent,
  tempoEvent,
  variableLength,
} from './midi/midi-file.ts';
export {
  type PlayedNote,
  type PlayedScore,
  performScore,
  secondsAt,
} from './midi/perform-score.ts';
export type { PlayedBar } from './midi/play-order.ts';
export { scoreToMidi, ticksPerCrotchet } from './midi/score-to-midi.ts';
export { escapeXml } from './musicxml/element.ts';
export { scoreToMusicXml } from './musicxml/score-to-musicxml.ts';
export { type Interval, intervalBetween, invertDirection, transposePitch } from './pitch/interval.ts';
export {
  fifthsToName,
  formatPitch,
  formatPitchName,
  frequencyToMidi,
  type Letter,
  midiToFrequency,
  type Pitch,
  type PitchName,
  parsePitch,
  parsePitchName,
  pitchClass,
  pitchToMidi,
  type SoundingPitch,
  sounding,
  type WrittenPitch,
  written,
} from './pitch/pitch.ts';
export { type Beam, beamEvents } from './rhythm/beams.ts';
export {
  barLength,
  createMetre,
  formatMetre,
  type Metre,
  type MetreUnit,
  parseMetre,
} from './rhythm/metre.ts';
export { beatUnits } from './rhythm/metre-tree.ts';
export { splitSilence, splitSpan, writeEvent } from './rhythm/split-span.ts';
export { metreDivisions, metricWeights, syncopation, syncopationByNote } from './rhythm/syncopation.ts';
export {
  easiestTonic,
  findScale,
  listScales,
  type Scale,
  type ScaleId,
  scaleFifths,
  spellScale,
} from './scale/scale.ts';
export {
  barRest,
  chordSymbol,
  createScore,
  dynamic,
  eventValue,
  hit,
  note,
  noteHead,
  notes,
  part,
  partBar,
  rest,
  scoreBar,
  slash,
  swingMark,
  tempoMark,
  tuplet,
  withSystems,
  withTablature,
  words,
} from './score/create-score.ts';
export { findScoreFaults, type ScoreFault } from './score/find-score-faults.ts';
export type {
  Articulation,
  ChordSymbol,
  Direction,
  Dynamic,
  HitEvent,
  NoteEvent,
  NoteHead,
  Part,
  PartBar,
  RestEvent,
  Score,
  ScoreBar,
  ScoreClef,
  ScoreEvent,
  SlashEvent,
  SlurPlace,
  Staff,
  SwingMark,
  TempoMark,
  TupletPlace,
  Voice,
} from './score/score.ts';
export { crotchetsPerMinute } from './score/tempo.ts';
export { type SheetFor, type StudentShape, shapeFor } from './shape/student-shape.ts';
export { materialJsonSchema } from './spec/material-json-schema.ts';
export {
  type ArpeggioSpec,
  type ChartSpec,
  fieldsByKind,
  type LineSpec,
  type MaterialKind,
  type MaterialSpec,
  materialKinds,
  type PhraseSpec,
  parseMaterialSpec,
  type ReadingSpec,
  type RhythmSpec,
  type ScaleSpec,
} from './spec/material-spec.ts';
export type { JsonValue, SpecFault, SpecFaultKind } from './spec/spec-fault.ts';
