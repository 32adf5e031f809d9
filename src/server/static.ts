// The built screens from disk: hashed assets may be kept for ever, the page itself is asked for anew each time.

import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';
import type { MiddlewareHandler } from 'hono';

const typeByExtension: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
  '.sf3': 'application/octet-stream',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
};

/** Serves files below `folder`; any path without an extension is a screen and gets `index.html`. */
export function serveScreens(folder: string): MiddlewareHandler {
  const root = normalize(folder);
  return async (c) => {
    const path = decodePath(c.req.path);
    if (path === null) return c.notFound();
    const extension = extname(path);
    const file = extension === '' ? join(root, 'index.html') : normalize(join(root, path));
    if (!file.startsWith(root + sep)) return c.notFound();
    const type = typeByExtension[extname(file)];
    if (type === undefined) return c.notFound();
    try {
      const body = await readFile(file);
      c.header('content-type', type);
      c.header(
        'cache-control',
        path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
      );
      return c.body(new Uint8Array(body));
    } catch {
      return c.notFound();
    }
  };
}

function decodePath(path: string): string | null {
  try {
    const decoded = decodeURIComponent(path);
    return decoded.includes('\0') ? null : decoded;
  } catch {
    return null;
  }
}
