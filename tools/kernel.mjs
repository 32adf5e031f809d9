// Compiles the planner's kernel (AssemblyScript, src/planning/solve/kernel) to WebAssembly and writes it into
// kernel-code.ts, so that nothing has to be compiled where the planner only runs. With --check: whether that is up to date.
import { readFileSync, writeFileSync } from 'node:fs';
import asc from 'assemblyscript/asc';
import binaryen from 'binaryen';

const target = 'src/planning/solve/kernel-code.ts';
const { error, stderr, binary: compiled } = await compile();
if (error) {
  console.error(`The planner's kernel does not compile.\n${stderr}`);
  process.exit(1);
}
const binary = inlineMore(compiled);
const text = `// Made by \`npm run kernel\` from kernel/: not to be edited.

/** The kernel as WebAssembly, in base64. */
export const kernelCode =
  '${Buffer.from(binary).toString('base64')}';
`;
if (process.argv.includes('--check')) {
  const isCurrent = readFileSync(target, 'utf8') === text;
  if (!isCurrent) console.error(`${target} is not what kernel/ compiles to: npm run kernel`);
  process.exit(isCurrent ? 0 : 1);
}
writeFileSync(target, text);
console.log(`${target}: ${binary.length} bytes of WebAssembly`);

async function compile() {
  let binary = null;
  const { error, stderr } = await asc.main(
    [
      'src/planning/solve/kernel/index.ts',
      '-o',
      'kernel.wasm',
      '-O3',
      '--noAssert',
      '--runtime',
      'stub',
      '--use',
      'abort=',
    ],
    {
      writeFile(_name, contents) {
        binary = contents;
      },
    },
  );
  return { error, stderr: stderr.toString(), binary };
}

/**
 * Node's engine does not inline WebAssembly, and the compiler stops at small functions: with these limits the same plans
 * take 0.90 of the processor time.
 */
function inlineMore(code) {
  const module = binaryen.readBinary(code);
  // the features that the compiler has on by default
  module.setFeatures(binaryen.Features.All & ~binaryen.Features.GC);
  binaryen.setOptimizeLevel(4);
  binaryen.setShrinkLevel(0);
  binaryen.setAlwaysInlineMaxSize(20);
  binaryen.setFlexibleInlineMaxSize(200);
  binaryen.setOneCallerInlineMaxSize(4000);
  binaryen.setAllowInliningFunctionsWithLoops(true);
  for (let pass = 0; pass < 3; pass++) module.optimize();
  return module.emitBinary();
}
