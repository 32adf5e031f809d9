// What the check needs of Verovio 6.3, which comes without types.
declare module 'verovio/wasm' {
  const createVerovioModule: () => Promise<object>;
  // biome-ignore lint/style/noDefaultExport: the package exports it so.
  export default createVerovioModule;
}
declare module 'verovio/esm' {
  export class VerovioToolkit {
    constructor(module: object);
    setOptions(options: Readonly<Record<string, unknown>>): void;
    loadData(text: string): boolean | number;
    /** A Standard MIDI File in base 64. */
    renderToMIDI(): string;
  }
}
