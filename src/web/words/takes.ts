// What recording, hearing and keeping takes says. Evidence is told, never marked: no word here calls a figure good or bad.

import { longestTake } from '#contract';
import type { EvidenceName, FigureUnit } from '#listening';
import type { DecodeFault } from '../takes/decode-sound.ts';

const count = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;

const longestMinutes = longestTake / 60;

const rows: Readonly<Record<EvidenceName, string>> = {
  phrases: 'Phrases',
  noteValues: 'Note values',
  syncopation: 'Syncopation',
  notesChosen: 'Notes chosen',
  timing: 'Timing',
  intonation: 'Intonation',
  tone: 'Tone',
  dynamics: 'Dynamics',
  motifs: 'Motifs',
};

const figures: Readonly<Record<EvidenceName, Readonly<Record<string, string>>>> = {
  phrases: {
    count: 'how many',
    shortest: 'shortest',
    longest: 'longest',
    differentLengths: 'different lengths',
    meanRest: 'rest between, on average',
    restShare: 'time in rests',
  },
  noteValues: {
    kinds: 'different values',
    entropy: 'variety',
    longestRun: 'longest run of one value, in notes',
    mostUsedShare: 'notes of the most used value',
  },
  syncopation: { heldOffBeatShare: 'notes off the beat, held over the next', perBar: 'strength in a bar' },
  notesChosen: {
    inScale: 'playing time in the scale',
    chordTonesOnStrongBeats: 'strong beats on a chord tone',
    outsideResolved: 'outside notes that resolve by step',
    differentPitches: 'different pitches',
  },
  timing: {
    late: 'late (early with a minus), on average',
    lateShareOfBeat: 'the same as a share of a beat',
    spread: 'spread about the beat',
    drift: 'change of tempo from first to last note',
    swing: 'first quaver of a pair to the second',
  },
  intonation: {
    tuning: 'own tuning against A = 440 Hz',
    spread: 'spread about it',
    low: 'low register against it',
    middle: 'middle register against it',
    high: 'high register against it',
  },
  tone: {
    longNotes: 'long notes',
    pitchUnsteadiness: 'pitch moves inside them by',
    loudnessUnsteadiness: 'loudness moves inside them by',
    harmonicShare: 'energy in the harmonics',
    vibratoRate: 'vibrato, swings a second',
    vibratoExtent: 'vibrato, extent',
    vibratoShare: 'long notes with vibrato',
  },
  dynamics: { range: 'from soft to loud', slope: 'louder from beginning to end by' },
  motifs: {
    motifs: 'cells that come back',
    coveredShare: 'notes that belong to one',
    longest: 'longest, in notes',
  },
};

const units: Readonly<Record<FigureUnit, string>> = {
  count: '',
  bars: 'bars',
  beats: 'beats',
  seconds: 's',
  ms: 'ms',
  share: '%',
  percent: '%',
  bits: 'bits',
  strength: '',
  ratio: ': 1',
  cents: 'cents',
  db: 'dB',
  hertz: 'Hz',
};

function whyAsked(name: string, minority: 'under' | 'perhaps' | 'unknown', age: number | null): string {
  if (minority === 'unknown') return `The age of ${name} is not known here, so ${name} counts as under 18.`;
  if (minority === 'perhaps')
    return `Of ${name} only the year of birth is known here, so ${name} may still be under 18.`;
  return age === null ? `${name} is under 18.` : `${name} is ${age}.`;
}

export const takes = {
  title: 'Takes',
  record: 'Record a take',
  empty: 'Takes of this student belong here: a short recording, what was heard in it, and what it shows.',
  none: 'No takes yet.',
  untitled: 'A take',
  group: 'Takes are of one student. Whose take is it?',
  who: 'Student',
  of: (title: string, name: string) => `${title}, ${name}`,
  row: (title: string, day: string) => `${title}, ${day}`,
  facts: (length: string, notes: number) => `${length} · ${count(notes, 'note', 'notes')}`,
  atHome: 'recorded in practice',
  withSound: 'sound kept',
  figuresOnly: 'figures only',
  shows: (skill: string, level: string) => `shows “${skill}”: ${level}`,
  open: 'Look at it',
  hearIt: 'Hear the take',
  hearOf: (skill: string, day: string) => `Hear the take of ${day}: ${skill}`,
  beside: 'Lay beside',
  besideWhich: 'Another take',
  compare: 'Lay side by side',
  compareChoose: 'Tick two takes to lay them side by side.',
  chooseToCompare: (what: string) => `Lay side by side: ${what}`,
  discard: 'Discard',
  discardHelp: 'A discarded take can be taken back for seven days; then its sound is deleted for good.',
  erase: 'Delete the sound',
  eraseTitle: 'Delete the sound for good?',
  eraseText: 'The figures stay. The sound cannot be brought back, by nobody.',
  eraseDo: 'Delete for good',
  leave: 'Leave it',
  loading: 'Opening the take',

  consent: {
    title: 'Consent to record',
    /** For a student under 18, one who may be, or one whose age is not known. */
    needed: (name: string, minority: 'under' | 'perhaps' | 'unknown', age: number | null) =>
      `${whyAsked(name, minority, age)} Before anything is recorded, whoever is responsible for ${name} must have agreed.`,
    caution:
      'Recordings stay on this machine. What consent must say, and from what age a student may give it alone, is a matter of local safeguarding and privacy law: ask whoever advises you.',
    givenBy: 'Who gave it',
    relation: 'Who they are to the student',
    relationHelp: 'mother, guardian, the student',
    on: 'Given on',
    note: 'How',
    noteHelp: 'in writing, by e-mail, the form in the folder',
    give: 'Note the consent',
    standing: (by: string, relation: string, day: string) =>
      `Consent to record: ${by}${relation === '' ? '' : ` (${relation})`}, ${day}.`,
    withdrawn: (day: string) => `Consent to record was withdrawn on ${day}.`,
    noneNeeded: 'An adult: ask before you record.',
    noneYet: 'No consent to record is noted.',
    withdraw: 'Withdraw',
    withdrawTitle: 'Withdraw the consent to record',
    withdrawText: 'From now on no takes of this student can be kept. What was heard in earlier ones stays.',
    withdrawSounds: (n: number) => `Delete the ${count(n, 'sound', 'sounds')} kept so far, for good`,
    withdrawDo: 'Withdraw the consent',
  },

  practice: {
    record: 'Record',
    recordOf: (task: string) => `Record: ${task}`,
  },

  setUp: {
    title: 'Before the take',
    company: 'Heard while playing',
    companies: {
      click: 'a click',
      band: 'a band over the chords',
      countIn: 'only the count-in',
      nothing: 'nothing, at no set tempo',
    },
    bandLoads: 'The band gets ready',
    bandFailed: 'The band could not be loaded. Try again, or play to a click.',
    noChart: 'The band needs chords it can read: write bars such as “C | Am | F | G7”.',
    tempo: 'Tempo, beats a minute',
    metre: 'Metre',
    countIn: 'Bars counted in',
    more: 'Scale and chords, if there are any',
    scale: 'Scale, at sounding pitch',
    scaleHelp: 'D dorian, Bb major pentatonic',
    chart: 'Chords, at sounding pitch',
    chartHelp: 'Dm7 | G7 | C | C',
    swing: 'Swung quavers',
    headphones:
      'Click or backing belongs in headphones, not too loud: what the microphone hears of it muddies the notes. Over a loudspeaker, let the delay be measured once.',
    check: 'Open the microphone',
    checking: 'Opening the microphone',
    level: 'Input level',
    levelQuiet: 'Play something: nothing is heard yet.',
    levelSoft: 'Soft: come nearer, or turn the input up.',
    levelRight: 'Heard clearly.',
    levelLoud: 'Nearly cut off: turn the input down, or step back.',
    latency: 'Measure the delay',
    measuring: 'Five clicks, quiet please',
    latencyIs: (ms: number) => `Delay of loudspeaker and microphone: ${ms} ms, taken into account.`,
    latencyNot: 'The clicks were not heard clearly: turn the loudspeaker up, or use headphones.',
    file: 'Open a file',
    fileHelp: `A file: wav, mp3, m4a, ogg, webm or flac, up to ${longestMinutes} minutes; its tempo is found in the playing unless you set it here.`,
    muted: 'The microphone is switched off at its own button or by the system.',
    refused:
      'The browser does not let this page use the microphone. Allow it beside the address at the top, then try again; or open a file.',
    missing: 'No microphone is connected. Plug one in and try again; or open a file.',
    inUse:
      'The microphone is there, but another program holds it. Close that program and try again; or open a file.',
    insecure:
      'A browser lends its microphone only to a page opened on this machine itself, or by https. Open Levare on the machine that has the microphone; or open a file.',
    gone: 'The microphone went away. Plug it in again and open it.',
    noMicrophone: 'The microphone could not be opened. Try again; or open a file.',
    bad: (field: string) => `Look at “${field}” again.`,
  },
  /** Where one is in recording a take. */
  steps: {
    setUp: 'Before the take',
    recording: 'The take',
    listening: 'Listening to the take',
    heard: 'What was heard',
  },
  recording: {
    begin: 'Record',
    countIn: 'Counting in',
    now: 'Recording',
    stop: 'Stop',
    cancel: 'Cancel',
    time: (text: string) => text,
    goneMidway: 'The microphone went away. What was recorded until then is here.',
    nothing: 'Nothing was recorded. See that the microphone is connected, and try again.',
    leaveTitle: 'This take is not kept yet.',
    leave: 'Throw it away',
    stay: 'Go on with it',
    tooLong: `${longestMinutes} minutes are the longest take; it was stopped.`,
  },
  listening: {
    decoding: 'Reading the file',
    notes: 'Listening for notes',
    beat: 'Finding the beat',
    evidence: 'Gathering what it shows',
    cancel: 'Cancel',
    stopped: 'Listening broke off. Try again; if it happens again, try a shorter take.',
  },
  decode: {
    tooLarge: 'That file is too large to open. Cut the passage out, or save it as mp3, ogg or flac.',
    tooLong: `That file is longer than ${longestMinutes} minutes. Cut the passage out first.`,
    unreadable: 'This browser cannot read that file as sound. Save it as wav, mp3, m4a, ogg or flac.',
    empty: 'There is nothing in that file.',
  } satisfies Record<DecodeFault, string>,

  result: {
    heard: (notes: number, length: string) => `${count(notes, 'note', 'notes')} in ${length}`,
    tempo: (tempo: number) => `${tempo} beats a minute`,
    offClick: 'The playing did not lie on the click, so it is measured by its own beat.',
    noNotes: 'No notes were heard.',
    hear: 'Hear',
    stop: 'Stop',
    hearPassage: (shows: string) => `Hear: ${shows}`,
    at: (bar: number | null, seconds: string) => (bar === null ? `at ${seconds}` : `bar ${bar}`),
    roll: 'The take as notes over time',
    rollTable: 'The notes as a table',
    onset: 'Begins, s',
    length: 'Lasts, s',
    pitch: 'Pitch',
    cents: 'Cents',
    loudness: 'dB',
    note: (pitch: string, at: string) => `Hear ${pitch} at ${at}`,
    notation: 'As notation',
    evidence: 'What it shows',
    couldNotHear: 'Could not hear.',
    uncertainty:
      'Behind each ± stands the doubt of the measurement: the truth lies within it about nineteen times in twenty.',
    passages: (n: number) => count(n, 'passage', 'passages'),
    observe: 'Make it an observation',
    observeHelp:
      'The figures tell what was heard; the level is yours to judge. The take is kept as its proof.',
    skill: 'Skill',
    noSkill: 'no level',
    keepSound: 'Keep the sound too',
    under: (amount: string) => `under ${amount}`,
    keepSoundHelp: (megabytes: string) => `${megabytes} MB, on this machine`,
    soundTooLarge: (megabytes: string) =>
      `The sound has ${megabytes} MB; at most 8 are kept, so only the figures can be.`,
    what: 'What was played',
    keep: 'Keep the take',
    keepObserved: 'Keep, and note the level',
    held: 'The studio has not answered yet. The take waits in this browser and is kept as soon as it does.',
    noteIt: 'Note the level',
    chooseLevel: 'Choose the level first.',
    again: 'Record again',
    keptFigures: 'Only the figures of this take were kept.',
  },

  /** Takes that waited in this browser and were refused when they came to the studio. */
  refused: {
    mark: (n: number) => `Kept here: ${count(n, 'refused take', 'refused takes')}`,
    title: 'Takes that the studio refused',
    lead: 'Each stays in this browser until it is taken or you discard it. Discard what is not to be kept, as of a student who was erased.',
    notDurable: 'This browser keeps nothing: what is here is lost when the page is closed.',
    told: (title: string, why: string) => `The take “${title}” was refused. ${why}`,
    stays: 'It stays in this browser: “Kept here” on the page leads to it.',
    toDo: 'Try again once that is mended; or save the sound as a file, which “Open a file” under “Record a take” hears again; or discard it.',
    toDoFigures: 'Try again once that is mended; or discard it. Its sound was not to be kept.',
    sound: (megabytes: string) => `sound: ${megabytes} MB`,
    withLevel: 'with a level',
    again: (title: string) => `Try again: ${title}`,
    save: 'Save the sound as a file',
    saveOf: (title: string) => `Save the sound as a file: ${title}`,
    discardOf: (title: string) => `Discard: ${title}`,
    discardTitle: (title: string) => `Discard “${title}” for good?`,
    discardText: 'What was not saved as a file cannot be brought back, by nobody.',
    discardDo: 'Discard it for good',
    discarded: (title: string) => `Discarded the take “${title}”`,
  },

  side: {
    title: 'Two takes side by side',
    figure: 'Figure',
    difference: 'Difference',
    larger: 'larger than the doubt',
    within: 'within the doubt',
    notHeard: 'could not hear',
    none: 'Nothing could be heard in either take.',
  },
  rows,
  figure: (row: EvidenceName, name: string) => figures[row][name] ?? name,
  units,
} as const;
