// The reference programs live in this folder's own node_modules, outside the default install.

import { createRequire } from 'node:module';
import { join } from 'node:path';

const require = createRequire(join(import.meta.dirname, 'package.json'));

/** The folder file a package resolves to, or null when it is not installed. */
export function findReference(name: string): string | null {
  try {
    return require.resolve(name);
  } catch {
    return null;
  }
}

/** The CommonJS module of a package that is installed. `T` names the few methods used of it. */
export function requireReference<T>(name: string): T {
  return require(name) as T;
}

/** The same for a package that is an ES module. */
export async function importReference<T>(path: string): Promise<T> {
  return (await import(path)) as T;
}
