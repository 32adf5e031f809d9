// Wires everything real together: data folder, store, library, sessions, application, and a socket on loopback.

import { statSync } from 'node:fs';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { createSystemClock, err, ok, type Result } from '#core';
import { createPostgresStore, createSqliteStore, formatOpenFault, type OpenFault } from '#storage';
import type { Store } from '#studio';
import { createApp } from './app.ts';
import type { ServerConfig } from './config/config.ts';
import { createRandom } from './crypto-random.ts';
import { readLibrary } from './library/read-library.ts';
import { createHub } from './live/hub.ts';
import { createOutside } from './outside.ts';
import { createSessions } from './security/sessions.ts';

export interface RunningServer {
  /** `http://127.0.0.1:4380` */
  readonly address: string;
  readonly dataFolder: string;
  /** A fresh start-up link, good once and for ten minutes. */
  createLink(): string;
  stop(): Promise<void>;
}

export type StartFault = { readonly kind: 'StartFault'; readonly message: string };

/** Starts serving; everything that can stand in the way is a sentence. */
export async function startServer(
  config: ServerConfig,
  log: (line: string) => void,
): Promise<Result<RunningServer, StartFault>> {
  const package_ = join(import.meta.dirname, '..', '..');
  const screens = join(package_, 'dist', 'app');
  if (statSync(join(screens, 'index.html'), { throwIfNoEntry: false }) === undefined)
    return fault('The screens are not built. Run `npm run build`, then start again.');
  const library = await readLibrary(join(package_, 'library'));
  if (!library.ok) return fault(library.error.message);

  const opened = await openStore(config, log);
  if (!opened.ok) return fault(formatOpenFault(opened.error));
  const store = opened.value;

  const random = createRandom();
  const sessions = createSessions(join(config.dataFolder, 'sessions.json'), Date.now);
  const app = createApp(
    { store, outside: createOutside(store, random, library.value), hub: createHub(), log },
    { sessions, allowedHosts: config.allowedHosts, screens },
  );
  const listening = await listen(app.fetch, config);
  if (!listening.ok) {
    await store.close();
    return listening;
  }
  const { port, close } = listening.value;
  const address = `http://${config.host.includes(':') ? `[${config.host}]` : config.host}:${port}`;
  return ok({
    address,
    dataFolder: config.dataFolder,
    createLink: () => `${address}/enter?token=${sessions.createToken()}`,
    async stop() {
      await close();
      await store.close();
    },
  });
}

function openStore(config: ServerConfig, log: (line: string) => void): Promise<Result<Store, OpenFault>> {
  const clock = createSystemClock();
  if (config.postgres !== null) return createPostgresStore({ connectionString: config.postgres, clock });
  return createSqliteStore({
    path: join(config.dataFolder, 'studio.sqlite'),
    clock,
    onBackup: (outcome) => {
      if (!outcome.ok) log(`The backup failed (${outcome.error.kind}: ${outcome.error.detail}).`);
    },
  });
}

type Fetch = Parameters<typeof serve>[0]['fetch'];

function listen(
  fetch: Fetch,
  config: ServerConfig,
): Promise<Result<{ readonly port: number; close(): Promise<void> }, StartFault>> {
  return new Promise((done) => {
    const server = serve({ fetch, hostname: config.host, port: config.port }, (info) =>
      done(
        ok({
          port: info.port,
          close: () =>
            new Promise<void>((closed) => {
              server.close(() => closed());
              if ('closeAllConnections' in server) server.closeAllConnections();
            }),
        }),
      ),
    );
    server.once('error', (error: NodeJS.ErrnoException) => done(fault(listenFault(error, config))));
  });
}

function listenFault(error: NodeJS.ErrnoException, config: ServerConfig): string {
  if (error.code === 'EADDRINUSE')
    return `Port ${config.port} is taken; Levare may be running already. Give another: --port ${config.port + 1}.`;
  if (error.code === 'EACCES') return `This user may not listen on port ${config.port}. Give one above 1023.`;
  return `The address ${config.host}:${config.port} cannot be used: ${error.message}`;
}

const fault = (message: string): Result<never, StartFault> => err({ kind: 'StartFault', message });
