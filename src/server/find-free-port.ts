// Whether a port can be listened on, before anything is made for a studio that would not be reached.

import { createServer } from 'node:net';
import { err, ok, type Result } from '#core';
import type { ServerConfig } from './config/config.ts';

type Place = Pick<ServerConfig, 'host' | 'port'>;

/** Listens for a moment, and lets go again. The error is a sentence: what is in the way, and how to mend it. */
export function findFreePort({ host, port }: Place): Promise<Result<null, string>> {
  return new Promise((done) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => done(err(sayListenFault(error, { host, port }))));
    probe.listen(port, host, () => probe.close(() => done(ok(null))));
  });
}

/** Why an address cannot be listened on. */
export function sayListenFault(error: NodeJS.ErrnoException, { host, port }: Place): string {
  if (error.code === 'EADDRINUSE')
    return `Port ${port} is taken; Levare may be running already. Give another: --port ${port + 1}.`;
  if (error.code === 'EACCES') return `This user may not listen on port ${port}. Give one above 1023.`;
  return `The address ${host}:${port} cannot be used: ${error.message}`;
}
