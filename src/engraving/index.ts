// engraving: from MusicXML to SVG, by Verovio; loaded only when a sheet is wanted.

export {};
