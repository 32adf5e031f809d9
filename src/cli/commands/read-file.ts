// Reads a file a person named, or says in one sentence why it cannot be read.

import { readFile, stat } from 'node:fs/promises';
import { err, formatJsonFault, ok, parseJson, type Result } from '#core';

const mostBytes = 200 * 1024 * 1024;

export async function readNamedFile(path: string): Promise<Result<string, string>> {
  try {
    const { size } = await stat(path);
    if (size > mostBytes) return err(`${path} is larger than 200 MB; it is not a file of Levare's.`);
    return ok(await readFile(path, 'utf8'));
  } catch (fault) {
    const code = fault instanceof Error && 'code' in fault ? fault.code : '';
    if (code === 'ENOENT') return err(`There is no file ${path}.`);
    if (code === 'EISDIR') return err(`${path} is a folder; name a file.`);
    if (code === 'EACCES') return err(`${path} may not be read by this user.`);
    return err(`${path} could not be read: ${fault instanceof Error ? fault.message : String(fault)}`);
  }
}

/** What stands in a JSON file a person named and may have written by hand. */
export async function readJsonFile(path: string): Promise<Result<unknown, string>> {
  const text = await readNamedFile(path);
  if (!text.ok) return text;
  const value = parseJson(text.value);
  return value.ok ? value : err(formatJsonFault(path, value.error));
}
