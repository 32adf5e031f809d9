// Reads a spreadsheet's export as rows of text (RFC 4180, and what spreadsheets make of it): the one file that knows
// papaparse. Commas, semicolons and tabs are told apart by the file itself.

import Papa from 'papaparse';
import { err, ok, type Result } from '#core';

export interface CsvRow {
  /** Line of the file on which the row begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export type CsvUnreadable = { readonly kind: 'CsvUnreadable'; readonly message: string };

const mostRows = 5000;

/** The rows of a file that hold anything, the heading first. */
export function readCsv(text: string): Result<readonly CsvRow[], CsvUnreadable> {
  const encoding = findEncodingFault(text);
  if (encoding !== null) return unreadable(encoding);
  const bare = text.replace(/^\uFEFF/, '');
  // Some spreadsheets say their delimiter on a line of its own.
  const said = /^sep=(.)\r?\n/i.exec(bare);
  const body = said === null ? bare : bare.slice(said[0].length);
  const firstLine = said === null ? 1 : 2;
  const delimiter = said?.[1] ?? findDelimiter(body);
  const parsed = Papa.parse<string[]>(body, { delimiter, newline: findNewline(body) });
  const broken = parsed.errors.find((e) => e.type === 'Quotes');
  const lines = lineCounter(body, firstLine);
  if (broken !== undefined)
    return unreadable(
      `A quotation mark is opened and not closed${broken.index === undefined ? '' : ` near line ${lines(broken.index)}`}. Close it, or double it where it belongs to the text.`,
    );
  const rows: CsvRow[] = [];
  let line = firstLine;
  for (const cells of parsed.data) {
    if (cells.some((cell) => cell.trim() !== '')) rows.push({ line, cells });
    line += 1 + cells.reduce((sum, cell) => sum + countBreaks(cell), 0);
  }
  if (rows.length === 0) return unreadable('The file is empty. Export the sheet that holds your students.');
  if (rows.length > mostRows)
    return unreadable(`The file has ${rows.length} rows; at most ${mostRows} are read. Split it.`);
  return ok(rows);
}

const countBreaks = (text: string) => text.match(/\r\n|\r|\n/g)?.length ?? 0;

/** The kind of line break that ends the first row; later ones may differ, and are read alike by then. */
function findNewline(text: string): '\r\n' | '\n' | '\r' {
  const found = /\r\n|\n|\r/.exec(text.replace(/"[^"]*"/g, ''))?.[0];
  return found === '\r\n' || found === '\r' ? found : '\n';
}

const delimiters = [',', ';', '\t'] as const;

/** The delimiter that stands most often in the first line, outside quotes; a comma when there is none. */
function findDelimiter(text: string): string {
  const [heading = ''] = text.replace(/"[^"]*"/g, '').split(/\r\n|\n|\r/, 1);
  let best: string = ',';
  let most = 0;
  for (const delimiter of delimiters) {
    const count = heading.split(delimiter).length - 1;
    if (count > most) [best, most] = [delimiter, count];
  }
  return best;
}

function lineCounter(text: string, first: number): (index: number) => number {
  return (index) => first + countBreaks(text.slice(0, index));
}

/** A file read in the wrong encoding shows it; nothing is guessed, because names would come out maimed. */
function findEncodingFault(text: string): string | null {
  const mend = 'Export it as “CSV UTF-8” and choose it again.';
  if (text.includes('\u0000')) return `The file is saved as UTF-16, or it is no text file at all. ${mend}`;
  if (text.startsWith('PK\u0003\u0004'))
    return 'This is a spreadsheet file, not a CSV file. In the spreadsheet choose “export” or “save as” and then CSV.';
  if (text.includes('\uFFFD'))
    return `Some letters cannot be read: the file is saved in an older encoding (such as Latin-1). ${mend}`;
  if (/Ã[\u0080-\u00BF]|â€[™œ\u009d]/.test(text))
    return `Accented letters came out as pairs like “Ã¼”: the file was converted twice. ${mend}`;
  return null;
}

const unreadable = (message: string) => err({ kind: 'CsvUnreadable', message } as const);
