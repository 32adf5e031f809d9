// engraving: from MusicXML to SVG, by Verovio; loaded only when a sheet is wanted.

export { type DrawnSheet, drawSheet, type SheetDrawing } from './draw-sheet.ts';
export {
  type EngravedPage,
  type EngravingFault,
  type EngravingOptions,
  engrave,
  warmEngraver,
} from './engrave.ts';
export { musicTextFont } from './font/music-text-font.data.ts';
export { type Column, type PageForm, type PageMeasures, pageMeasures } from './page-form.ts';
export { pagesToSvgFile } from './svg/pages-to-svg-file.ts';
export { musicTextFamily } from './svg/svg-text.ts';
