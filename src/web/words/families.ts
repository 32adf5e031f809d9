import type { InstrumentFamily } from '#music';

export const families: Readonly<Record<InstrumentFamily, string>> = {
  woodwind: 'Woodwind',
  brass: 'Brass',
  strings: 'Strings',
  plucked: 'Plucked',
  keyboard: 'Keyboard',
  percussion: 'Percussion',
  voice: 'Voice',
};
