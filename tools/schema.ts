// Writes the published JSON Schemas of the library from the schemas the application reads with:
// npx tsx --conditions=levare-source tools/schema.ts
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { materialJsonSchema } from '#music';
import { unitJsonSchema } from '#planning';

mkdirSync('library/schema', { recursive: true });
for (const of of ['unit', 'skills'] as const)
  writeFileSync(`library/schema/${of}.schema.json`, `${JSON.stringify(unitJsonSchema(of), null, 2)}\n`);
writeFileSync('library/schema/material.schema.json', `${JSON.stringify(materialJsonSchema(), null, 2)}\n`);
const format = spawnSync(
  'node',
  ['node_modules/@biomejs/biome/bin/biome', 'format', '--write', 'library/schema'],
  { stdio: 'inherit' },
);
process.exit(format.status ?? 1);
