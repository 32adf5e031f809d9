// `levare sheet SPEC.json …`: a material spec made into a sheet for one player, as notation, sound or words.

import { err, ok, type Result } from '#core';
import { engrave, type PageForm, pagesToSvgFile } from '#engraving';
import {
  createSheet,
  describeScore,
  parseMaterialSpec,
  type Sheet,
  type SheetFor,
  type Stage,
  scoreToMidi,
  scoreToMusicXml,
  stages,
} from '#music';
import { putBytes } from './put-bytes.ts';
import { readJsonFile } from './read-file.ts';
import { readInstrument } from './read-instrument.ts';
import { readChoice, readName, readWhole, readWords, textOf } from './read-words.ts';
import { refuse } from './refuse.ts';

const formats = ['musicxml', 'svg', 'pdf', 'midi', 'text'] as const;
type Format = (typeof formats)[number];

interface Wanted {
  readonly file: string;
  readonly student: SheetFor;
  readonly format: Format;
  readonly form: PageForm;
  /** Where to write; null for standard output. */
  readonly out: string | null;
}

export async function sheet(words: readonly string[]): Promise<number> {
  const wanted = readWanted(words);
  if (!wanted.ok) return refuse('sheet', wanted.error);
  const { file, student, format, form, out } = wanted.value;
  const given = await readJsonFile(file);
  if (!given.ok) return refuse('sheet', given.error);
  const spec = parseMaterialSpec(given.value);
  if (!spec.ok) return refuse('sheet', `${file}: ${spec.error.message}`);
  const made = createSheet(spec.value, student);
  if (!made.ok) return refuse('sheet', made.error.message, 1);
  for (const note of made.value.notes) console.error(`levare sheet: ${note.text}`);
  const written = await writeSheet(made.value, format, form);
  if (!written.ok) return refuse('sheet', written.error, 1);
  const put = await putBytes(written.value, out);
  return put.ok ? 0 : refuse('sheet', put.error, 1);
}

const optionNames = ['instrument', 'stage', 'format', 'age', 'seed', 'page', 'out'] as const;

function readWanted(words: readonly string[]): Result<Wanted, string> {
  const read = readWords(
    words,
    Object.fromEntries(optionNames.map((name) => [name, { type: 'string' } as const])),
  );
  if (!read.ok) return read;
  const file = readName(read.value, 'material spec', 'levare sheet SPEC.json --instrument alto_sax …');
  if (!file.ok) return file;
  const instrument = readInstrument(textOf(read.value, 'instrument'), '--instrument');
  if (!instrument.ok) return instrument;
  const stage = readChoice(read.value, 'stage', stages, null);
  if (!stage.ok) return stage;
  const format = readChoice(read.value, 'format', formats, null);
  if (!format.ok) return format;
  const form = readChoice(read.value, 'page', ['a4', 'letter'] as const, 'a4');
  if (!form.ok) return form;
  const age = readWhole(read.value, 'age', 3, 99);
  if (!age.ok) return age;
  const seed = readWhole(read.value, 'seed', 0, 2 ** 31 - 1);
  if (!seed.ok) return seed;
  const out = textOf(read.value, 'out') ?? null;
  if (out === null && process.stdout.isTTY && (format.value === 'pdf' || format.value === 'midi'))
    return err(`--out is missing: a ${format.value} file is not for reading on a screen.`);
  const student = {
    instrument: instrument.value,
    stage: stage.value satisfies Stage,
    age: age.value,
    seed: seed.value ?? 1,
  };
  return ok({ file: file.value, student, format: format.value, form: form.value, out });
}

async function writeSheet(
  { score, title }: Sheet,
  format: Format,
  form: PageForm,
): Promise<Result<string | Uint8Array, string>> {
  if (format === 'musicxml') return ok(scoreToMusicXml(score));
  if (format === 'midi') return ok(scoreToMidi(score));
  const description = describeScore(score);
  if (format === 'text') return ok(`${description}\n`);
  const pages = await engrave(scoreToMusicXml(score), { form, description });
  if (!pages.ok) return err(pages.error.message);
  if (format === 'svg') return ok(pagesToSvgFile(pages.value));
  const { pagesToPdf } = await import('#paper'); // the typesetter is large, and only PDF needs it
  const pdf = await pagesToPdf(pages.value, { title, description });
  return pdf.ok ? pdf : err(pdf.error.message);
}
