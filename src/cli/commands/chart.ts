// `levare chart "| Dm7 G7 | C |" --for ID`: a chart of sounding chords, as the player of an instrument reads it, in house style.

import { formatChart, invertDirection, parseChart, transposeChart, transpositionOf } from '#music';
import { readInstrument } from './read-instrument.ts';
import { readWords, textOf } from './read-words.ts';

export async function chart(words: readonly string[]): Promise<number> {
  const read = readWords(words, { for: { type: 'string' } });
  if (!read.ok) return refuse(read.error);
  const [typed, ...more] = read.value.positionals;
  if (typed === undefined || more.length > 0)
    return refuse('give one chart, in quotation marks: levare chart "| Dm7 G7 | C |" --for alto_sax');
  const instrument = readInstrument(textOf(read.value, 'for'), '--for');
  if (!instrument.ok) return refuse(instrument.error);
  const parsed = parseChart(typed);
  if (!parsed.ok) return refuse(parsed.error.message);
  console.log(formatChart(transposeChart(parsed.value, invertDirection(transpositionOf(instrument.value)))));
  return 0;
}

function refuse(reason: string): 2 {
  console.error(`levare chart: ${reason}`);
  return 2;
}
