// paper: engraved pages as a PDF file, by typst's typesetter; Node only.

export { type PaperFault, pagesToPdf } from './pages-to-pdf.ts';
