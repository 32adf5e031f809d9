// What a take can be listened to for, in the words of a unit's editor and of what is said after a take. Nothing here is a mark:
// a take is heard to show something, or not, or it could not be heard.

import type { CheckAnswer, CheckKind } from '#listening';

export interface KindWords {
  readonly group: string;
  readonly name: string;
  /** What it needs, or how its figures are meant; a sentence. */
  readonly help: string;
  readonly fields: Readonly<Record<string, { readonly label: string; readonly unit?: string }>>;
}

const groups = {
  phrases: 'Phrases and ideas',
  rhythm: 'Rhythm',
  notes: 'Notes',
  time: 'Time',
  sound: 'Sound',
} as const;

const kinds: Readonly<Record<CheckKind, KindWords>> = {
  phraseLengths: {
    group: groups.phrases,
    name: 'phrases of different lengths',
    help: 'A rest of a beat ends a phrase. Two that differ by less than half a bar are of one length.',
    fields: { atLeast: { label: 'Different lengths, at least' } },
  },
  phrasesOfBars: {
    group: groups.phrases,
    name: 'phrases of one length',
    help: 'A rest of a beat ends a phrase.',
    fields: {
      bars: { label: 'Length', unit: 'bars' },
      atLeast: { label: 'Such phrases, at least' },
    },
  },
  restShare: {
    group: groups.phrases,
    name: 'room between the phrases',
    help: 'Time in rests, from the first note to the last.',
    fields: { atLeast: { label: 'At least', unit: '%' }, atMost: { label: 'At most', unit: '%' } },
  },
  motif: {
    group: groups.phrases,
    name: 'an idea that comes back',
    help: 'Three to eight notes that come back, also from another note or in another place of the bar.',
    fields: { times: { label: 'Played at least', unit: 'times' } },
  },
  mostlyValue: {
    group: groups.rhythm,
    name: 'mostly one note value, with contrast',
    help: 'The other values are the contrast.',
    fields: {
      value: { label: 'Note value' },
      share: { label: 'At least', unit: '% of the notes' },
      others: { label: 'Other values, at least' },
    },
  },
  valueVariety: {
    group: groups.rhythm,
    name: 'variety of note values',
    help: 'One value alone has 0 bits, two used alike have 1, four used alike have 2.',
    fields: { atLeastBits: { label: 'At least', unit: 'bits' } },
  },
  syncopation: {
    group: groups.rhythm,
    name: 'notes held over the beat',
    help: 'Notes that begin off the beat and are held over the next.',
    fields: { atLeastShare: { label: 'At least', unit: '% of the notes' } },
  },
  inScale: {
    group: groups.notes,
    name: 'inside the scale',
    help: 'The scale is written before the take.',
    fields: { atLeastShare: { label: 'At least', unit: '% of the playing' } },
  },
  chordTones: {
    group: groups.notes,
    name: 'chord tones on strong beats',
    help: 'The chords are those of the backing, or are written before the take.',
    fields: { atLeastShare: { label: 'At least', unit: '% of strong beats' } },
  },
  evenTiming: {
    group: groups.time,
    name: 'even about the beat',
    help: 'How far notes lie before or after the beat, on average: the smaller, the steadier.',
    fields: { withinMs: { label: 'Within', unit: 'ms' } },
  },
  keepsTempo: {
    group: groups.time,
    name: 'one tempo from beginning to end',
    help: 'How much faster or slower the end is than the beginning.',
    fields: { withinPercent: { label: 'Change at most', unit: '%' } },
  },
  swing: {
    group: groups.time,
    name: 'quavers that swing',
    help: '1 is even, 2 is a triplet’s swing: the first quaver is twice as long as the second.',
    fields: { from: { label: 'From', unit: ': 1' }, to: { label: 'to', unit: ': 1' } },
  },
  longNotes: {
    group: groups.sound,
    name: 'long notes that stay in tune',
    help: 'How far the pitch may stray from where the note belongs (A = 440 Hz); a semitone has 100 cents.',
    fields: {
      withinCents: { label: 'Within', unit: 'cents' },
      seconds: { label: 'Held at least', unit: 's' },
      times: { label: 'How many' },
    },
  },
  inTune: {
    group: groups.sound,
    name: 'in tune with itself',
    help: 'How far notes stray from the take’s own tuning; a semitone has 100 cents.',
    fields: { withinCents: { label: 'Within', unit: 'cents' } },
  },
  dynamicRange: {
    group: groups.sound,
    name: 'soft and loud',
    help: 'About 6 dB is noticed, about 10 dB sounds twice as loud. The microphone must stay where it is.',
    fields: { atLeastDb: { label: 'At least', unit: 'dB' } },
  },
  vibrato: {
    group: groups.sound,
    name: 'vibrato on long notes',
    help: '',
    fields: { times: { label: 'Long notes, at least' } },
  },
};

const answers: Readonly<Record<CheckAnswer['answer'], string>> = {
  reached: 'Heard',
  'not yet': 'Not heard this time',
  'too close to tell': 'Too close to tell',
  'could not hear': 'Could not hear',
};

export const listenFor = {
  kinds,
  answers,
  title: 'What a recorded take can show of it',
  none: 'Nothing: you look and listen yourself.',
  add: 'Listen for something',
  what: 'Listens for',
  of: (at: number) => `Listened for, ${at}`,
  sentence: (what: string) => `After a take it says whether it heard ${what}.`,
  outside: (low: number, high: number) => `A number from ${low} to ${high}.`,
  notWhole: (low: number, high: number) => `A whole number from ${low} to ${high}.`,
  crossed: 'The smaller of the two comes first.',

  /** On a unit's page and on a course. */
  shownBy: 'A take shows it by:',

  /** After a take. */
  checks: 'What you listen for here',
  checksHelp:
    'From the checks of this work. What was heard is told; whether that is enough, and what level it shows, is yours to judge.',
  measured: (figure: string) => `measured ${figure}`,
  found: (count: string) => `found ${count}`,
} as const;
