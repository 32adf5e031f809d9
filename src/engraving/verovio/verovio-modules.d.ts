// What we use of Verovio's two modules; the package brings no types.

declare module 'verovio/wasm' {
  /** Loads the WebAssembly engine; about 0.3 s and 135 MB. */
  const createVerovioModule: () => Promise<object>;
  // biome-ignore lint/style/noDefaultExport: the package exports it so.
  export default createVerovioModule;
}

declare module 'verovio/esm' {
  export class VerovioToolkit {
    constructor(module: object);
    setOptions(options: Readonly<Record<string, unknown>>): void;
    /** False when nothing could be made of the text. */
    loadData(text: string): boolean | number;
    getPageCount(): number;
    /** From 1. */
    renderToSVG(page: number): string;
    /** A Standard MIDI File in base 64. */
    renderToMIDI(): string;
  }
  export function enableLog(level: number, module: object): void;
  export const LOG_OFF: number;
}
