// Engraved pages as one PDF: the SVG stays vector, text stays text with our fonts inside, black on white.

import { join } from 'node:path';
import { err, ok, type Result } from '#core';
import type { EngravedPage } from '#engraving';
import { loadTypesetter, workspace } from './typesetter.ts';

export interface PaperFault {
  readonly kind: 'NotPrintable';
  readonly message: string;
}

export interface PdfOptions {
  readonly title: string;
  /** The sheet in words, for screen readers. */
  readonly description?: string;
}

/** One PDF page for each engraved page, of its size. The same pages give the same bytes. */
export async function pagesToPdf(
  pages: readonly EngravedPage[],
  { title, description = '' }: PdfOptions,
): Promise<Result<Uint8Array, PaperFault>> {
  const typesetter = await loadTypesetter();
  const images = pages.map(({ svg }, i) => ({ name: `page-${i + 1}.svg`, svg }));
  try {
    for (const { name, svg } of images) typesetter.mapShadow(join(workspace, name), Buffer.from(svg));
    const sheets = pages.map(
      ({ widthMm, heightMm }, i) =>
        `#page(width: ${widthMm}mm, height: ${heightMm}mm, margin: 0mm, image("page-${i + 1}.svg", width: ${widthMm}mm, height: ${heightMm}mm, alt: ${quote(i === 0 && description ? description : title)}))`,
    );
    return ok(
      typesetter.pdf({
        mainFileContent: [
          `#set document(title: ${quote(title)}, date: none)`,
          '#set text(lang: "en")',
          ...sheets,
        ].join('\n'),
      }),
    );
  } catch (fault) {
    const reason = fault instanceof Error ? fault.message : String(fault);
    return err({ kind: 'NotPrintable', message: `The PDF could not be made: ${reason}` });
  } finally {
    typesetter.resetShadow();
    typesetter.evictCache(0);
  }
}

/** A typst string literal. */
const quote = (text: string): string =>
  `"${text
    .replace(/[\\"]/g, '\\$&')
    .replace(/\n/g, '\\n')
    .replace(/\p{Cc}/gu, ' ')}"`;
