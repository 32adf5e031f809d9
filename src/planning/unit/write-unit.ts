// Units as text that people read and edit. What is written reads back as exactly the same value.

import { stringify } from 'yaml';
import type { UnitFile } from './unit.ts';

/** JSON, indented by two, ending in a line feed. */
export function writeUnitJson(file: UnitFile): string {
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** YAML 1.2 with paragraphs as block text, one line each, and without aliases. */
export function writeUnitYaml(file: UnitFile): string {
  return stringify(file, {
    version: '1.2',
    schema: 'core',
    aliasDuplicateObjects: false,
    lineWidth: 0, // folding would put breaks into sentences that an editor then has to keep
    blockQuote: 'literal',
  });
}
