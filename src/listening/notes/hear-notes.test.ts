import { describe, expect, it } from 'vitest';
import { createSeededRandom } from '#core';
import { hearNotes } from './hear-notes.ts';
import type { HeardNote } from './heard-note.ts';

interface Played {
  readonly at: number;
  readonly lasts: number;
  readonly midi: number;
  readonly size?: number;
  /** Cents and hertz. */
  readonly vibrato?: readonly [number, number];
}

const hertz = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);

/** Tones of eight partials, 10 ms to begin and 20 ms to end. */
function play(seconds: number, notes: readonly Played[], rate = 44_100): Float32Array {
  const samples = new Float32Array(Math.round(seconds * rate));
  for (const { at, lasts, midi, size = 0.1, vibrato = [0, 0] } of notes) {
    let phase = 0;
    for (let n = 0; n < lasts * rate; n++) {
      const t = n / rate;
      phase += hertz(midi + (vibrato[0] / 100) * Math.sin(2 * Math.PI * vibrato[1] * t)) / rate;
      let value = 0;
      for (let h = 1; h <= 8 && h * hertz(midi) < rate / 2.2; h++)
        value += Math.sin(2 * Math.PI * h * phase) / h;
      const index = Math.round(at * rate) + n;
      samples[index] = (samples[index] ?? 0) + value * size * Math.min(1, t / 0.01, (lasts - t) / 0.02);
    }
  }
  return samples;
}

function addNoise(samples: Float32Array, size: number): Float32Array {
  const random = createSeededRandom(17);
  return samples.map((x) => x + size * (random.next() + random.next() + random.next() - 1.5));
}

/** Every played note was heard within the times and cents given, and nothing else was. */
function expectHeard(heard: readonly HeardNote[], played: readonly Played[], ms = 20, cents = 10): void {
  expect(heard.map((note) => note.midi)).toEqual(played.map((note) => Math.round(note.midi)));
  heard.forEach((note, i) => {
    const as = played[i];
    if (as === undefined) return;
    expect(Math.abs(note.onset - as.at) * 1000).toBeLessThan(ms);
    expect(Math.abs(100 * (note.midi - as.midi) + note.cents)).toBeLessThan(cents);
  });
}

const scale: readonly Played[] = [60, 62, 64, 65, 67, 69, 71, 72].map((midi, i) => ({
  at: 0.5 + 0.4 * i,
  lasts: 0.35,
  midi,
}));

describe('[L1] notes, within 20 ms and 10 cents of what was played', () => {
  it('a scale', () => expectHeard(hearNotes(play(4.5, scale), 44_100).notes, scale));

  it('the ends of notes within 50 ms', () => {
    hearNotes(play(4.5, scale), 44_100).notes.forEach((note, i) => {
      expect(Math.abs(note.offset - (0.85 + 0.4 * i))).toBeLessThan(0.05);
    });
  });

  for (const rate of [8000, 22_050, 48_000, 96_000])
    it(`at ${rate} samples a second`, () =>
      expectHeard(hearNotes(play(4.5, scale, rate), rate).notes, scale));

  for (const midi of [28, 36, 48, 60, 72, 84, 96, 106])
    it(`key ${midi} alone, 30 cents high`, () => {
      const played = [{ at: 0.5, lasts: 0.8, midi: midi + 0.3 }];
      expectHeard(hearNotes(play(2, played), 44_100).notes, played, 30, midi > 100 ? 12 : 6);
    });

  it('in noise 20 dB softer', () => {
    expectHeard(hearNotes(addNoise(play(4.5, scale), 0.02), 44_100).notes, scale, 30);
  });

  it('40 dB softer, as loud as they are', () => {
    const soft = scale.map((note) => ({ ...note, size: 0.001 }));
    const notes = hearNotes(play(4.5, soft), 44_100).notes;
    expectHeard(notes, soft);
    for (const note of notes) expect(Math.abs(note.db + 61.1)).toBeLessThan(2);
  });

  it('one pitch over and over, tongued with 40 ms between', () => {
    const repeated = Array.from({ length: 8 }, (_, i) => ({ at: 0.5 + 0.25 * i, lasts: 0.21, midi: 67 }));
    expectHeard(hearNotes(play(3, repeated), 44_100).notes, repeated, 30);
  });

  it('a legato line without any gap', () => {
    const slurred = scale.map((note) => ({ ...note, lasts: 0.41 }));
    expectHeard(hearNotes(play(4.5, slurred), 44_100).notes, slurred, 30);
  });

  it('a wide vibrato is one note', () => {
    const played: readonly Played[] = [{ at: 0.5, lasts: 2, midi: 69, vibrato: [60, 5.5] }];
    expectHeard(hearNotes(play(3, played), 44_100).notes, played, 30, 15);
  });

  for (const midi of [36, 43, 55, 67, 79])
    it(`a vibrato of a semitone and a half on key ${midi} is one note, and nobody else is heard`, () => {
      const played: readonly Played[] = [{ at: 0.5, lasts: 2, midi, vibrato: [75, 5.5] }];
      const { notes, problems } = hearNotes(play(3, played), 44_100);
      expectHeard(notes, played, 40, 25);
      expect(problems).toEqual([]);
    });

  it('two notes in turn, as far apart and as fast as a wide vibrato, are notes', () => {
    const turns = Array.from({ length: 12 }, (_, i) => ({
      at: 0.5 + i * 0.11,
      lasts: 0.115,
      midi: i % 2 === 0 ? 69 : 71,
    }));
    expectHeard(hearNotes(play(2.5, turns), 44_100).notes, turns, 35, 25);
  });

  it('semiquavers at 180 a minute', () => {
    const fast = Array.from({ length: 16 }, (_, i) => ({
      at: 0.5 + i / 12,
      lasts: 1 / 12 - 0.01,
      midi: 60 + ((i * 5) % 12),
    }));
    expectHeard(hearNotes(play(2.5, fast), 44_100).notes, fast, 35, 25);
  });
});

describe('[L2] pitch at every moment', () => {
  it('within 5 cents in held notes, none in silence', () => {
    const { f0 } = hearNotes(play(2, [{ at: 0.5, lasts: 1, midi: 69.2 }]), 44_100);
    f0.midi.forEach((midi, t) => {
      const seconds = t * f0.hop;
      if (seconds > 0.55 && seconds < 1.45) expect(Math.abs((midi ?? 0) - 69.2) * 100).toBeLessThan(5);
      if (seconds < 0.4 || seconds > 1.7) expect(midi).toBeNull();
    });
  });
});

describe('[L8] what cannot be heard is said', () => {
  const problem = (samples: Float32Array, rate = 44_100) => {
    const { notes, problems } = hearNotes(samples, rate);
    return { notes: notes.length, kinds: problems.map((one) => one.kind) };
  };

  it('no sample at all, and a twentieth of a second', () => {
    expect(problem(new Float32Array(0))).toEqual({ notes: 0, kinds: ['TooShort'] });
    expect(problem(play(0.05, [{ at: 0, lasts: 0.05, midi: 69 }]))).toEqual({
      notes: 0,
      kinds: ['TooShort'],
    });
  });

  for (const rate of [0, -1, 1000, 1e9, Number.NaN])
    it(`a rate of ${rate}`, () => {
      expect(problem(new Float32Array(44_100), rate)).toEqual({ notes: 0, kinds: ['RateUnusable'] });
    });

  it('silence, and a constant offset', () => {
    expect(problem(new Float32Array(88_200))).toEqual({ notes: 0, kinds: ['TooQuiet'] });
    expect(problem(new Float32Array(88_200).fill(0.3)).notes).toBe(0);
  });

  for (const size of [0.001, 0.02, 0.3])
    it(`white noise of ${size}`, () => {
      expect(problem(addNoise(new Float32Array(220_500), size))).toEqual({
        notes: 0,
        kinds: ['MostlyNoise'],
      });
    });

  it('clicks', () => {
    const clicks = new Float32Array(220_500).map((_, n) => (n % 22_050 < 300 ? Math.exp(-n / 40) : 0));
    expect(problem(addNoise(clicks, 0.0003)).notes).toBe(0);
  });

  it('a recording cut off at full scale is still heard', () => {
    const loud = play(4.5, scale).map((x) => Math.max(-1, Math.min(1, 12 * x)));
    expect(problem(loud)).toEqual({ notes: 8, kinds: ['Clipped'] });
  });

  it('chords', () => {
    const chords = [0, 5, 7, 0].flatMap((root, i) =>
      [60, 64, 67].map((key) => ({ at: 0.5 + i, lasts: 0.9, midi: key + root })),
    );
    expect(problem(play(5, chords)).kinds).toEqual(['MoreThanOneVoice']);
  });

  it('two players who move by themselves', () => {
    const other = [55, 57, 52, 50, 48, 53].map((midi, i) => ({
      at: 0.4 + 0.6 * i,
      lasts: 0.55,
      midi,
      size: 0.08,
    }));
    expect(problem(play(4.5, [...scale, ...other])).kinds).toEqual(['MoreThanOneVoice']);
  });

  it('a backing as loud as the playing', () => {
    const backing = [1.6, 3.2, 4.8].map((at) => ({ at, lasts: 1, midi: 58 }));
    const own = [0.5, 2.6, 4.2].map((at) => ({ at, lasts: 0.4, midi: 70 }));
    const { notes } = hearNotes(play(6, [...backing, ...own]), 44_100, { instrument: 'flute' });
    expect(notes.filter((note) => note.midi === 70).length).toBe(3);
  });

  it('broken samples count as silence', () => {
    const samples = play(2, [{ at: 0.5, lasts: 1, midi: 69 }]);
    for (let n = 0; n < samples.length; n += 5000) samples[n] = Number.NaN;
    expect(hearNotes(samples, 44_100).notes.every((note) => note.midi === 69)).toBe(true);
  });
});

describe('[L7] what is known beforehand', () => {
  it('a range is expected; what is clear outside it is heard, and said', () => {
    const low: readonly Played[] = [{ at: 0.5, lasts: 1, midi: 52 }];
    const { notes, problems } = hearNotes(play(2, low), 44_100, { instrument: 'flute' });
    expectHeard(notes, low, 30);
    expect(problems).toEqual([{ kind: 'OutsideRange', share: 1 }]);
  });

  it('playing beside the tempo and the place that were given is heard as it was played', () => {
    // At 100 to the minute these quavers of 137 fall everywhere in the beat.
    const own = Array.from({ length: 16 }, (_, i) => ({
      at: 0.5 + (i * 30) / 137,
      lasts: 0.17,
      midi: 60 + ((i * 5) % 12),
    }));
    const samples = play(4.5, own);
    const { notes } = hearNotes(samples, 44_100, { tempo: 100, offsetS: 0.5 });
    expectHeard(notes, own, 25, 15);
    expect(notes).toEqual(hearNotes(samples, 44_100).notes);
  });

  it('a note left out, one too many and two off the beat stay where they were played', () => {
    const beats = [0, 1, 2, 4, 5, 5.5, 6, 7.31, 8, 8.67, 9, 10, 11, 11.12, 12];
    const own = beats.map((beat) => ({ at: 0.5 + 0.6 * beat, lasts: 0.06, midi: 67 }));
    const samples = play(8.5, own);
    const { notes } = hearNotes(samples, 44_100, { tempo: 100, offsetS: 0.5 });
    expectHeard(notes, own, 20, 10);
  });

  it('what is weak far below the range is no note of the instrument', () => {
    const hum: readonly Played[] = [{ at: 0.1, lasts: 6, midi: 31, size: 0.02 }];
    const own = scale.map((note) => ({ ...note, midi: note.midi + 12 }));
    const { notes } = hearNotes(play(6.5, [...hum, ...own]), 44_100, { instrument: 'clarinet_bb' });
    expect(notes.map((note) => note.midi)).toEqual(own.map((note) => note.midi));
  });
});
