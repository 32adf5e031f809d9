// One typst compiler for the process, made with our fonts when the first PDF is wanted (0.1 s).

import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import { musicTextFont } from '#engraving';
import { woffToFont } from './woff-to-font.ts';

const require = createRequire(import.meta.url);
const fontFiles = [
  require.resolve('@fontsource/instrument-serif/files/instrument-serif-latin-400-normal.woff'),
  require.resolve('@fontsource/instrument-serif/files/instrument-serif-latin-400-italic.woff'),
  require.resolve('@fontsource/instrument-sans/files/instrument-sans-latin-400-normal.woff'),
  require.resolve('@fontsource/instrument-sans/files/instrument-sans-latin-400-italic.woff'),
  require.resolve('@fontsource/instrument-sans/files/instrument-sans-latin-500-normal.woff'),
  require.resolve('@fontsource/instrument-sans/files/instrument-sans-latin-600-normal.woff'),
];

/** A name for the folder the compiler thinks it works in; nothing is read from it or written to it. */
export const workspace = join(tmpdir(), 'levare-paper');

let loading: Promise<NodeCompiler> | null = null;

export function loadTypesetter(): Promise<NodeCompiler> {
  loading ??= load().catch((fault: unknown) => {
    loading = null;
    throw fault;
  });
  return loading;
}

async function load(): Promise<NodeCompiler> {
  const files = await Promise.all(fontFiles.map((file) => readFile(file)));
  const fontBlobs = [Buffer.from(musicTextFont, 'base64'), ...files.map(woffToFont)];
  return NodeCompiler.create({ workspace, fontArgs: [{ fontBlobs }] });
}
