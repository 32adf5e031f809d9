// Puts what a command made into a file, or on standard output.

import { writeFile } from 'node:fs/promises';
import { err, ok, type Result } from '#core';

export async function putBytes(
  bytes: string | Uint8Array,
  out: string | null,
): Promise<Result<null, string>> {
  if (out === null) {
    process.stdout.write(bytes);
    return ok(null);
  }
  try {
    await writeFile(out, bytes);
    return ok(null);
  } catch (fault) {
    return err(couldNotWrite(out, fault));
  }
}

export const couldNotWrite = (out: string, fault: unknown): string =>
  `${out} could not be written: ${fault instanceof Error ? fault.message : String(fault)}`;
