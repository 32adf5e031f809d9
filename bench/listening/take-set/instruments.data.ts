// The instruments of the take set: General MIDI program for the sampled voice, and the make-up of the computed one.
// Ranges are sounding MIDI numbers a student plays; formants and times are chosen by ear and from common textbook figures
// (no source): they only have to differ from the sampled voices.

export interface Formant {
  readonly hz: number;
  readonly width: number;
  readonly gain: number;
}

export interface TakeInstrument {
  /** Id in #music. */
  readonly id: string;
  readonly program: number;
  readonly low: number;
  readonly high: number;
  readonly make: 'blown' | 'bowed' | 'sung' | 'plucked' | 'struck';
  /** Seconds from nothing to full sound. */
  readonly attack: number;
  /** Seconds from the end of the note to silence. */
  readonly release: number;
  /** Fall of the partials in dB per octave. */
  readonly slope: number;
  /** Strength of the even partials beside the odd ones, 0 to 1. */
  readonly even: number;
  /** Breath, bow or pick noise in dB below the tone. */
  readonly noise: number;
  readonly formants: readonly Formant[];
}

const f = (hz: number, width: number, gain: number): Formant => ({ hz, width, gain });

export const takeInstruments: readonly TakeInstrument[] = [
  {
    id: 'flute',
    program: 73,
    low: 60,
    high: 88,
    make: 'blown',
    attack: 0.045,
    release: 0.06,
    slope: -14,
    even: 0.9,
    noise: 26,
    formants: [f(800, 500, 1)],
  },
  {
    id: 'clarinet_bb',
    program: 71,
    low: 50,
    high: 82,
    make: 'blown',
    attack: 0.03,
    release: 0.05,
    slope: -8,
    even: 0.12,
    noise: 36,
    formants: [f(1500, 600, 1.5), f(3700, 900, 1)],
  },
  {
    id: 'alto_sax',
    program: 65,
    low: 49,
    high: 79,
    make: 'blown',
    attack: 0.025,
    release: 0.06,
    slope: -6,
    even: 0.8,
    noise: 30,
    formants: [f(700, 300, 2), f(1400, 400, 1.2), f(3000, 700, 0.6)],
  },
  {
    id: 'trumpet_bb',
    program: 56,
    low: 54,
    high: 82,
    make: 'blown',
    attack: 0.03,
    release: 0.05,
    slope: -5,
    even: 1,
    noise: 40,
    formants: [f(1200, 500, 2.5), f(2500, 900, 1.2)],
  },
  {
    id: 'trombone',
    program: 57,
    low: 41,
    high: 70,
    make: 'blown',
    attack: 0.04,
    release: 0.06,
    slope: -6,
    even: 1,
    noise: 40,
    formants: [f(550, 300, 2.2), f(1600, 700, 0.9)],
  },
  {
    id: 'violin',
    program: 40,
    low: 55,
    high: 91,
    make: 'bowed',
    attack: 0.06,
    release: 0.1,
    slope: -6,
    even: 1,
    noise: 30,
    formants: [f(290, 50, 1), f(460, 70, 1.6), f(1000, 300, 0.8), f(2600, 900, 1.6)],
  },
  {
    id: 'cello',
    program: 42,
    low: 36,
    high: 72,
    make: 'bowed',
    attack: 0.07,
    release: 0.12,
    slope: -6,
    even: 1,
    noise: 30,
    formants: [f(110, 30, 1), f(210, 50, 1.4), f(430, 120, 1), f(1500, 600, 0.9)],
  },
  {
    id: 'guitar',
    program: 24,
    low: 40,
    high: 76,
    make: 'plucked',
    attack: 0.002,
    release: 0.08,
    slope: -6,
    even: 0.9,
    noise: 28,
    formants: [f(105, 30, 1.2), f(210, 50, 1), f(2300, 900, 0.5)],
  },
  {
    id: 'piano',
    program: 0,
    low: 48,
    high: 84,
    make: 'struck',
    attack: 0.003,
    release: 0.1,
    slope: -9,
    even: 1,
    noise: 38,
    formants: [f(200, 150, 0.6), f(1200, 800, 0.4)],
  },
  {
    id: 'voice_mezzo',
    program: 53,
    low: 57,
    high: 77,
    make: 'sung',
    attack: 0.06,
    release: 0.08,
    slope: -12,
    even: 1,
    noise: 34,
    formants: [f(650, 110, 8), f(1080, 130, 5), f(2650, 200, 2.5), f(2900, 250, 2)],
  },
  {
    id: 'recorder_descant',
    program: 74,
    low: 72,
    high: 91,
    make: 'blown',
    attack: 0.02,
    release: 0.04,
    slope: -16,
    even: 0.5,
    noise: 28,
    formants: [f(2000, 900, 0.6)],
  },
  {
    id: 'double_bass',
    program: 32,
    low: 28,
    high: 55,
    make: 'plucked',
    attack: 0.004,
    release: 0.1,
    slope: -8,
    even: 0.9,
    noise: 32,
    formants: [f(70, 25, 1.2), f(140, 50, 1), f(400, 200, 0.6)],
  },
];
