// A sheet as a PDF: made and engraved here as it is on the screen, set by the typesetter, and not kept. Both are large, so
// they are loaded when the first PDF is wanted.

import type { Context } from 'hono';
import { sheetPdfSchema } from '#contract';
import { present } from '#core';
import { describeScore, findInstrument, parseMaterialSpec } from '#music';
import { refuse } from '../answer.ts';
import { readBody } from '../body.ts';

export const postSheetPdf = async (c: Context) => {
  const body = await readBody(c, sheetPdfSchema);
  if (!body.ok) return refuse(c, body.error);
  const { instrument, stage, age, seed, paper, noteNames } = body.value;
  const spec = parseMaterialSpec(body.value.spec);
  if (!spec.ok)
    return refuse(c, { kind: 'Invalid', field: `spec${spec.error.at}`, message: spec.error.message });
  const { drawSheet } = await import('#engraving');
  const drawn = await drawSheet(
    spec.value,
    { instrument: present(findInstrument(instrument), 'an instrument of the list'), stage, age, seed },
    { form: paper, naming: noteNames },
  );
  if (!drawn.ok) return refuse(c, { kind: 'Invalid', message: drawn.error.message });
  const { sheet, pages } = drawn.value;
  const { pagesToPdf } = await import('#paper');
  const pdf = await pagesToPdf(pages, {
    title: sheet.title,
    description: describeScore(sheet.score, noteNames),
  });
  if (!pdf.ok) return refuse(c, { kind: 'Broken', message: pdf.error.message });
  c.header('content-type', 'application/pdf');
  c.header('content-disposition', 'attachment; filename="sheet.pdf"');
  c.header('x-content-type-options', 'nosniff');
  return c.body(Buffer.from(pdf.value));
};
