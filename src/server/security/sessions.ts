// Who may speak to this server: a start-up link carries a token that works once and becomes a strict same-site cookie.
// Sessions outlive a restart (a lesson must not end at a sign-in page), kept as hashes in the data folder.

import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { makeFolder } from '#storage';

export interface Sessions {
  /** The cookie's name: its own for each data folder, since a browser sends cookies to every port of a machine. */
  readonly cookie: string;
  /** A fresh one-time token, good for ten minutes after it is made. */
  createToken(): string;
  /** Trades a token for a session secret; null when it is unknown, used or too old. */
  redeem(token: string): string | null;
  isKnown(secret: string): boolean;
}

const tokenLifeMs = 10 * 60_000;
const mostSessions = 50;

/** Sessions kept in a file (mode 0600), or in memory alone when `file` is null. */
export function createSessions(file: string | null, now: () => number): Sessions {
  const tokens = new Map<string, number>();
  let hashes = file === null ? [] : readHashes(file);
  return {
    cookie: `levare-session-${hash(file ?? '').slice(0, 8)}`,
    createToken() {
      const token = randomBytes(24).toString('base64url');
      tokens.set(hash(token), now());
      return token;
    },
    redeem(token) {
      const key = hash(token);
      const made = tokens.get(key);
      if (made === undefined) return null;
      tokens.delete(key);
      if (now() - made > tokenLifeMs) return null;
      const secret = randomBytes(32).toString('base64url');
      hashes = [...hashes, hash(secret)].slice(-mostSessions);
      if (file !== null) keepHashes(file, hashes);
      return secret;
    },
    isKnown(secret) {
      const wanted = Buffer.from(hash(secret));
      return hashes.some(
        (known) => known.length === wanted.length && timingSafeEqual(Buffer.from(known), wanted),
      );
    },
  };
}

const hash = (secret: string): string => createHash('sha256').update(secret).digest('hex');

function readHashes(file: string): readonly string[] {
  try {
    const read: unknown = JSON.parse(readFileSync(file, 'utf8'));
    return Array.isArray(read)
      ? read.filter((h): h is string => typeof h === 'string' && h.length === 64)
      : [];
  } catch {
    return []; // no file yet, or a damaged one: everyone signs in by a new link
  }
}

/** On a full disk the browser is known until Levare ends: its teacher must get in to see the lessons, and what is wrong. */
function keepHashes(file: string, hashes: readonly string[]): void {
  try {
    makeFolder(dirname(file));
    writeFileSync(`${file}.new`, JSON.stringify(hashes), { mode: 0o600 });
    renameSync(`${file}.new`, file);
  } catch {
    // Kept in memory; the next link tries again.
  }
}
