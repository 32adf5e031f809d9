// The environment and the command line, turned once into typed configuration.

import { homedir, platform } from 'node:os';
import { join, resolve } from 'node:path';
import { err, ok, type Result } from '#core';

export interface ServerConfig {
  /** Loopback unless the teacher says otherwise. */
  readonly host: string;
  /** 0 asks the system for a free one. */
  readonly port: number;
  /** Folder with the database, backups and sessions. */
  readonly dataFolder: string;
  /** PostgreSQL connection string, or null for the embedded database. */
  readonly postgres: string | null;
  /** Extra names that the Host header may carry, for a studio served in its own network. */
  readonly allowedHosts: readonly string[];
}

export type ConfigFault = { readonly kind: 'ConfigFault'; readonly message: string };

/** Where a teacher's data belongs on this system when nothing else is said. */
export function defaultDataFolder(environment: NodeJS.ProcessEnv = process.env): string {
  if (platform() === 'win32')
    return join(environment['APPDATA'] ?? join(homedir(), 'AppData', 'Roaming'), 'Levare');
  if (platform() === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Levare');
  return join(environment['XDG_DATA_HOME'] ?? join(homedir(), '.local', 'share'), 'levare');
}

export interface ConfigOptions {
  readonly host?: string | undefined;
  readonly port?: string | undefined;
  readonly data?: string | undefined;
}

/**
 * Options win over `LEVARE_HOST`, `LEVARE_PORT`, `LEVARE_DATA`, `LEVARE_POSTGRES` and `LEVARE_ALLOWED_HOSTS`
 * (comma-separated). The port is 4380 when free to choose.
 */
export function readConfig(
  options: ConfigOptions,
  environment: NodeJS.ProcessEnv = process.env,
): Result<ServerConfig, ConfigFault> {
  const portText = options.port ?? environment['LEVARE_PORT'] ?? '4380';
  const port = Number(portText);
  if (!/^\d{1,5}$/.test(portText) || port > 65535)
    return err({
      kind: 'ConfigFault',
      message: `The port is "${portText}"; it must be a number from 0 to 65535.`,
    });
  return ok({
    host: options.host ?? environment['LEVARE_HOST'] ?? '127.0.0.1',
    port,
    dataFolder: resolve(options.data ?? environment['LEVARE_DATA'] ?? defaultDataFolder(environment)),
    postgres: environment['LEVARE_POSTGRES'] || null,
    allowedHosts: (environment['LEVARE_ALLOWED_HOSTS'] ?? '')
      .split(',')
      .map((h) => h.trim().toLowerCase())
      .filter((h) => h !== ''),
  });
}

/** Where the embedded database of a studio is. */
export const studioFile = ({ dataFolder }: Pick<ServerConfig, 'dataFolder'>): string =>
  join(dataFolder, 'studio.sqlite');
