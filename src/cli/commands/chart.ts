// `levare chart "| Dm7 G7 | C |" --for ID`: a chart of sounding chords, as the player of an instrument reads it, in house style.

import { formatChart, invertDirection, parseChart, transposeChart, transpositionOf } from '#music';
import { readInstrument } from './read-instrument.ts';
import { readName, readWords, textOf } from './read-words.ts';
import { refuse } from './refuse.ts';

export async function chart(words: readonly string[]): Promise<number> {
  const read = readWords(words, { for: { type: 'string' } });
  if (!read.ok) return refuse('chart', read.error);
  const typed = readName(
    read.value,
    'chart in quotation marks',
    'levare chart "| Dm7 G7 | C |" --for alto_sax',
  );
  if (!typed.ok) return refuse('chart', typed.error);
  const instrument = readInstrument(textOf(read.value, 'for'), '--for');
  if (!instrument.ok) return refuse('chart', instrument.error);
  const parsed = parseChart(typed.value);
  if (!parsed.ok) return refuse('chart', parsed.error.message);
  console.log(formatChart(transposeChart(parsed.value, invertDirection(transpositionOf(instrument.value)))));
  return 0;
}
