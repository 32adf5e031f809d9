// Wires everything real together: data folder, store, library, sessions, application, and a socket on loopback.

import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { createSystemClock, err, ok, type Result } from '#core';
import {
  createPostgresStore,
  createSqliteStore,
  formatOpenFault,
  makeFolder,
  type OpenFault,
  type SqliteStore,
} from '#storage';
import type { Store } from '#studio';
import { addressesOf } from './addresses.ts';
import { createApp } from './app.ts';
import { type ServerConfig, studioFile } from './config/config.ts';
import { createRandom } from './crypto-random.ts';
import { findFreePort, sayListenFault } from './find-free-port.ts';
import { forgetOldChanges } from './forget-old-changes.ts';
import { readLibrary } from './library/read-library.ts';
import { createHub } from './live/hub.ts';
import { createOutside } from './outside.ts';
import { createSessions } from './security/sessions.ts';

export interface RunningServer {
  /** `http://127.0.0.1:4380` */
  readonly address: string;
  readonly dataFolder: string;
  /** A fresh start-up link for a browser on this machine, good once and for ten minutes. */
  createLink(): string;
  /** The same for other devices: one for each address of this machine that is served, none on loopback. */
  createOtherLinks(): readonly string[];
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
  const library = await readLibrary();
  if (!library.ok) return fault(library.error.message);

  // A port that is taken is told before a folder is made for a studio that never opens. Where there is a studio, whoever
  // has it open is told first.
  const isNew = !existsSync(studioFile(config));
  const free = isNew ? await findFreePort(config) : ok(null);
  if (!free.ok) return fault(free.error);
  const opened = await openStore(config, log);
  if (!opened.ok) return fault(formatOpenFault(opened.error));
  const store = opened.value;
  const stopForgetting = forgetOldChanges(store, log);

  const random = createRandom();
  const sessions = createSessions(join(config.dataFolder, 'sessions.json'), Date.now);
  const app = createApp(
    {
      store,
      outside: createOutside(store, random, library.value),
      hub: createHub(Date.now()),
      copies: 'listCopies' in store ? store : null,
      log,
    },
    { sessions, allowedHosts: [config.host.toLowerCase(), ...config.allowedHosts], screens },
  );
  const listening = await listen(app.fetch, config);
  if (!listening.ok) {
    stopForgetting();
    await store.close();
    return listening;
  }
  const { port, close } = listening.value;
  const linkAt = (address: string) => `${address}/enter?token=${sessions.createToken()}`;
  const address = addressesOf(config.host, port).here;
  return ok({
    address,
    dataFolder: config.dataFolder,
    createLink: () => linkAt(address),
    createOtherLinks: () => addressesOf(config.host, port).elsewhere.map(linkAt),
    async stop() {
      await close();
      stopForgetting();
      await store.close();
    },
  });
}

async function openStore(
  config: ServerConfig,
  log: (line: string) => void,
): Promise<Result<Store | SqliteStore, OpenFault>> {
  const clock = createSystemClock();
  if (config.postgres !== null) {
    const path = config.dataFolder;
    try {
      makeFolder(path); // for the sessions
    } catch (error) {
      const detail = error instanceof Error ? error.message : String(error);
      return err({ kind: 'FolderUnusable', path, detail });
    }
    return createPostgresStore({ connectionString: config.postgres, clock });
  }
  return createSqliteStore({
    path: studioFile(config),
    clock,
    onBackup: (outcome) => {
      if (!outcome.ok) log(`The backup failed (${outcome.error.kind}: ${outcome.error.detail}).`);
    },
  });
}

/** How long a connection may rest before the studio lets go of it; browsers do so long before. */
const restMilliseconds = 60 * 60 * 1000;

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
    // After the usual five seconds a request is cut off that comes just as a busy machine lets go of the connection.
    if ('keepAliveTimeout' in server) server.keepAliveTimeout = restMilliseconds;
    server.once('error', (error: NodeJS.ErrnoException) => done(fault(sayListenFault(error, config))));
  });
}

const fault = (message: string): Result<never, StartFault> => err({ kind: 'StartFault', message });
