// Reads a command's words with Node's own parser; a word it does not know is a fault of the caller, said in one line.

import { type ParseArgsConfig, parseArgs } from 'node:util';
import { err, ok, type Result } from '#core';

export interface Words {
  readonly values: Readonly<Record<string, string | boolean | undefined>>;
  readonly positionals: readonly string[];
}

export function readWords(
  words: readonly string[],
  options: NonNullable<ParseArgsConfig['options']>,
): Result<Words, string> {
  try {
    const { values, positionals } = parseArgs({ args: [...words], options, allowPositionals: true });
    return ok({ values: values as Words['values'], positionals });
  } catch (fault) {
    return err(fault instanceof Error ? fault.message : String(fault));
  }
}

/** A text option, or undefined. */
export function textOf(words: Words, name: string): string | undefined {
  const value = words.values[name];
  return typeof value === 'string' ? value : undefined;
}
