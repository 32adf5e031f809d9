// Reads a file a person named, or says in one sentence why it cannot be read.

import { readFile, stat } from 'node:fs/promises';
import { err, formatJsonFault, ok, parseJson, type Result } from '#core';

/** As much as the server takes: the sounds of a studio alone make 200 MB of its export. */
export const mostFileBytes = 400 * 1024 * 1024;

export async function readNamedFile(path: string): Promise<Result<string, string>> {
  try {
    const { size } = await stat(path);
    if (size > mostFileBytes)
      return err(`${path} is larger than 400 MB, as no file of Levare's is; name another one.`);
    return ok(await readFile(path, 'utf8'));
  } catch (fault) {
    return err(explainUnread(path, fault));
  }
}

/** Why a file could not be read, of the error that Node threw. */
export function explainUnread(path: string, fault: unknown): string {
  const code = fault instanceof Error && 'code' in fault ? fault.code : '';
  if (code === 'ENOENT') return `There is no file ${path}. Check its name and its folder.`;
  if (code === 'EISDIR') return `${path} is a folder; name a file.`;
  if (code === 'EACCES') return `${path} may not be read by this user; change who may read it, or copy it.`;
  return `${path} could not be read: ${fault instanceof Error ? fault.message : String(fault)}`;
}

/** What stands in a JSON file a person named and may have written by hand. */
export async function readJsonFile(path: string): Promise<Result<unknown, string>> {
  const text = await readNamedFile(path);
  if (!text.ok) return text;
  const value = parseJson(text.value);
  return value.ok ? value : err(formatJsonFault(path, value.error));
}
