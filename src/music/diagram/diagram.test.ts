import { describe, expect, test } from 'vitest';
import { present } from '#core';
import { parseChord } from '../chord/chord.ts';
import { chordVoicings } from '../fingering/chord-voicing.ts';
import { fingeringOf, fingerLine } from '../fingering/finger-line.ts';
import { fullRange, listInstruments } from '../instrument/instrument.ts';
import { fifthsToName, parsePitch, pitchToMidi, type WrittenPitch, written } from '../pitch/pitch.ts';
import { chordDiagram } from './chord-diagram.ts';
import type { Drawing, Mark } from './drawing.ts';
import { drawingToSvg } from './drawing-to-svg.ts';
import { isDrawable } from './hole-diagram.ts';
import { keyboardDiagram } from './keyboard-diagram.ts';
import { noteDiagram } from './note-diagram.ts';

const pitch = (text: string) => written(present(parsePitch(text), text));

function notesOf(low: WrittenPitch, high: WrittenPitch): readonly WrittenPitch[] {
  const notes: WrittenPitch[] = [];
  for (let octave = 0; octave < 9; octave++)
    for (let fifths = -5; fifths < 7; fifths++) {
      const note = written({ ...fifthsToName(fifths), octave });
      if (pitchToMidi(note) >= pitchToMidi(low) && pitchToMidi(note) <= pitchToMidi(high)) notes.push(note);
    }
  return notes;
}

/** Left, right, top and bottom of a mark. */
function extent(mark: Mark): readonly [number, number, number, number] {
  switch (mark.shape) {
    case 'line': {
      const half = mark.width / 2;
      return [
        Math.min(mark.x1, mark.x2) - half,
        Math.max(mark.x1, mark.x2) + half,
        Math.min(mark.y1, mark.y2) - half,
        Math.max(mark.y1, mark.y2) + half,
      ];
    }
    case 'circle':
    case 'half-circle': {
      const r = mark.r + mark.outline / 2;
      return [mark.x - r, mark.x + r, mark.y - r, mark.y + r];
    }
    case 'box': {
      const [w, h] = [(mark.width + mark.outline) / 2, (mark.height + mark.outline) / 2];
      return [mark.x - w, mark.x + w, mark.y - h, mark.y + h];
    }
    case 'text': {
      const [w, h] = [0.32 * mark.size * mark.text.length, 0.5 * mark.size];
      return [mark.x - w, mark.x + w, mark.y - h, mark.y + h];
    }
  }
}

function expectInside(drawing: Drawing) {
  for (const mark of drawing.marks) {
    const [left, right, upper, lower] = extent(mark);
    const inside = left >= 0 && right <= drawing.width && upper >= 0 && lower <= drawing.height;
    expect(inside, `${drawing.title}: ${JSON.stringify(mark)} in ${drawing.width} × ${drawing.height}`).toBe(
      true,
    );
  }
}

describe.each(listInstruments().map((i) => i))('$id', (instrument) => {
  test('every fingering has a diagram that holds all of it', () => {
    const { low, high } = fullRange(instrument);
    for (const note of notesOf(low, high)) {
      const fingering = fingeringOf(instrument.id, note, { stage: 'advanced' });
      if (fingering === null) continue;
      for (const way of [fingering.usual, ...fingering.alternates]) {
        if (way.kind === 'holes') expect(isDrawable(instrument.id, way), JSON.stringify(way)).toBe(true);
        const drawing = present(noteDiagram(instrument.id, note, way), instrument.id);
        expectInside(drawing);
        expect(drawing.description).not.toBe('');
      }
    }
  });
});

test('different fingerings of a woodwind look different', () => {
  for (const instrument of listInstruments()) {
    if (instrument.family !== 'woodwind') continue;
    const { low, high } = fullRange(instrument);
    const notesByPicture = new Map<string, number>();
    for (const note of notesOf(low, high)) {
      const fingering = fingeringOf(instrument.id, note);
      const drawing = fingering && noteDiagram(instrument.id, note, fingering.usual);
      if (!drawing || fingering.usual.kind !== 'holes') continue;
      const key = JSON.stringify([fingering.usual.pressed.toSorted(), fingering.usual.half]);
      const picture = JSON.stringify(drawing.marks);
      const twin = notesByPicture.get(picture);
      // The flute's second octave is the first, blown harder.
      if (instrument.id !== 'flute' && instrument.id !== 'piccolo') expect(twin, key).toBe(undefined);
      notesByPicture.set(picture, pitchToMidi(note));
    }
    expect(notesByPicture.size).toBeGreaterThan(22);
  }
});

test('a keyboard marks each key once, in the octaves it needs', () => {
  const pitches = ['C4', 'Eb4', 'G4', 'B4', 'D6'].map(pitch);
  const fingers = fingerLine('piano', pitches);
  const drawing = keyboardDiagram(
    'C minor major ninth',
    pitches.map((p, i) => {
      const note = fingers[i];
      return { pitch: p, finger: note?.kind === 'keyboard' ? note.finger : null };
    }),
  );
  expectInside(drawing);
  expect(drawing.marks.filter((mark) => mark.shape === 'circle').length).toBe(5);
  expect(drawing.width).toBe(3 * 7 * 14 + 2);
  expect(keyboardDiagram('Nothing', []).marks.length).toBe(24);
});

test('chords on six strings and four', () => {
  for (const [id, symbol] of [
    ['guitar', 'Bm'],
    ['guitar', 'C#m'],
    ['ukulele', 'Bb'],
  ] as const) {
    const chord = parseChord(symbol);
    if (!chord.ok) throw new Error(symbol);
    for (const voicing of chordVoicings(id, chord.value))
      expectInside(chordDiagram(id, chord.value, voicing));
  }
});

test('the SVG says what it shows and takes its colours from around it', () => {
  const e4 = present(fingeringOf('trumpet_bb', pitch('E4')), 'E4');
  const svg = drawingToSvg(present(noteDiagram('trumpet_bb', pitch('E4'), e4.usual), 'E4'));
  expect(svg).toContain('<title>Trumpet in B flat, written E4</title><desc>Valve 1 and 2</desc>');
  expect(svg).toContain('role="img"');
  expect(svg).toContain('fill="currentColor"');
  expect(svg).toContain('fill="#fff"');
  expect(drawingToSvg({ width: 1, height: 1, title: 'a < b & "c"', description: '', marks: [] })).toContain(
    'aria-label="a &lt; b &amp; &quot;c&quot;. "',
  );
});
