/** The page and breaks that we use, for Verovio with nothing around it. */
export const barePage = {
  pageWidth: 2100,
  pageHeight: 2970,
  pageMarginLeft: 140,
  pageMarginRight: 140,
  pageMarginTop: 130,
  pageMarginBottom: 140,
  unit: 8.75,
  spacingSystem: 7,
  breaks: 'line',
  footer: 'none',
  svgViewBox: true,
};
