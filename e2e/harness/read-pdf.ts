// What a PDF says of itself, read with nothing of ours: by poppler's tools where they are installed, else off its objects.

import { spawnSync } from 'node:child_process';
import { inflateSync } from 'node:zlib';

export interface PdfFacts {
  readonly title: string;
  readonly pages: number;
  /** The words on its pages; null where poppler is not installed. */
  readonly text: string | null;
}

/** Throws for what does not open as a PDF. */
export function readPdf(pdf: Buffer): PdfFacts {
  if (pdf.toString('latin1', 0, 5) !== '%PDF-') throw new Error('the file does not begin as a PDF does');
  const info = runPoppler('pdfinfo', pdf);
  const objects = objectsOf(pdf);
  return {
    title: info === null ? titleOf(objects) : (/^Title:\s+(.*)$/m.exec(info)?.[1] ?? ''),
    pages:
      info === null
        ? (objects.match(/\/Type ?\/Page\b/g) ?? []).length
        : Number(/^Pages:\s+(\d+)$/m.exec(info)?.[1]),
    text: runPoppler('pdftotext', pdf),
  };
}

/** What the tool prints; null where it is not installed. */
function runPoppler(tool: 'pdfinfo' | 'pdftotext', pdf: Buffer): string | null {
  const run = spawnSync(tool, tool === 'pdfinfo' ? ['-'] : ['-', '-'], { input: pdf, encoding: 'utf8' });
  if (run.error !== undefined) return null;
  if (run.status !== 0) throw new Error(`${tool} cannot open the file: ${run.stderr}`);
  return run.stdout;
}

/** The file with its compressed streams unpacked (ISO 32000-1, 7.3.8 and 7.4.4). */
function objectsOf(pdf: Buffer): string {
  const parts = [pdf.toString('latin1')];
  for (let at = pdf.indexOf('stream\n'); at >= 0; at = pdf.indexOf('stream\n', at + 7)) {
    try {
      parts.push(inflateSync(pdf.subarray(at + 7, pdf.indexOf('endstream', at))).toString('latin1'));
    } catch {
      // a stream that is not deflated is in the text already
    }
  }
  return parts.join('\n');
}

/** The document's title, where it is plain text (ISO 32000-1, 14.3.3). */
const titleOf = (objects: string): string =>
  /\/Title ?\(((?:[^()\\]|\\.)*)\)/.exec(objects)?.[1] ??
  /<dc:title>[\s\S]*?<rdf:li[^>]*>([^<]*)</.exec(objects)?.[1] ??
  '';
