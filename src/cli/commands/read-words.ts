// Reads a command's words with Node's own parser; a word it does not know is a fault of the caller, said in one line.

import { type ParseArgsConfig, parseArgs } from 'node:util';
import { err, nearestWord, ok, type Result } from '#core';

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
    const said = fault instanceof Error ? fault.message : String(fault);
    const unknown = /^Unknown option '(-[^']*)'/.exec(said)?.[1];
    if (unknown === undefined) {
      const option = /^Option '(?:-\w, )?(--[\w-]+)/.exec(said)?.[1];
      if (option === undefined) return err(said);
      const takes = options[option.slice(2)]?.type === 'string';
      return err(takes ? `${option} lacks its value: write ${option}=VALUE.` : `${option} takes no value.`);
    }
    const known = Object.keys(options);
    const hint =
      known.length === 0 ? '' : ` The nearest is --${nearestWord(unknown.replace(/^-+/, ''), known)}.`;
    return err(`there is no option ${unknown} here.${hint} \`levare help\` lists them.`);
  }
}

/** The one word that is no option and names a `kind`; `usage` shows the command with it. */
export function readName({ positionals }: Words, kind: string, usage: string): Result<string, string> {
  const [name, ...surplus] = positionals;
  if (name === undefined) return err(`name one ${kind}: ${usage}`);
  return surplus.length === 0 ? ok(name) : err(`name one ${kind} only; ${surplus.join(' ')} is too much.`);
}

/** A text option, or undefined. */
export function textOf(words: Words, name: string): string | undefined {
  const value = words.values[name];
  return typeof value === 'string' ? value : undefined;
}

/** One of some words; `fallback` stands in, or null makes it required. */
export function readChoice<Choice extends string>(
  words: Words,
  name: string,
  choices: readonly Choice[],
  fallback: Choice | null,
): Result<Choice, string> {
  const text = textOf(words, name);
  if (text === undefined)
    return fallback === null ? err(`--${name} is missing; say one of ${choices.join(', ')}.`) : ok(fallback);
  const found = choices.find((choice) => choice === text.toLowerCase());
  if (found !== undefined) return ok(found);
  return err(
    `--${name} is "${text}", not one of ${choices.join(', ')}. The nearest is "${nearestWord(text, choices)}".`,
  );
}

/** A whole number, or null where the option was left out. */
export function readWhole(
  words: Words,
  name: string,
  low: number,
  high: number,
): Result<number | null, string> {
  const text = textOf(words, name);
  if (text === undefined) return ok(null);
  const number = Number(text);
  if (text.trim() !== '' && Number.isInteger(number) && number >= low && number <= high) return ok(number);
  const nearest = Number.isFinite(number) ? Math.min(high, Math.max(low, Math.round(number))) : low;
  return err(`--${name} is "${text}", not a whole number from ${low} to ${high}. The nearest is ${nearest}.`);
}
