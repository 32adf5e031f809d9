// Under which addresses browsers reach the studio: on this machine, and on other devices in its network.

import { networkInterfaces } from 'node:os';

export interface Addresses {
  /** For a browser on this machine: `http://127.0.0.1:4380` wherever that is served, since browsers trust it most. */
  readonly here: string;
  /** For other devices, where they are served at all. */
  readonly elsewhere: readonly string[];
}

type Interfaces = ReturnType<typeof networkInterfaces>;

const everywhere: ReadonlySet<string> = new Set(['0.0.0.0', '::', '']);
const isLoopback = (host: string): boolean => /^(127\.|localhost$|::1$)/.test(host);

/** Addresses of what listens at a host and a port; `0.0.0.0` and `::` stand for all that this machine has. */
export function addressesOf(
  host: string,
  port: number,
  interfaces: Interfaces = networkInterfaces(),
): Addresses {
  const addressOf = (name: string) => `http://${name.includes(':') ? `[${name}]` : name}:${port}`;
  if (isLoopback(host)) return { here: addressOf(host), elsewhere: [] };
  if (!everywhere.has(host)) return { here: addressOf(host), elsewhere: [addressOf(host)] };
  const outward = Object.values(interfaces).flatMap((all) => (all ?? []).filter(({ internal }) => !internal));
  const ofFamily = (wanted: 'IPv4' | 'IPv6') => outward.filter(({ family }) => family === wanted);
  // One of the link alone (`fe80:`) is no address that can be typed: it needs the name of the device's own interface.
  const long = ofFamily('IPv6').filter(({ address }) => !/^fe[89ab]/i.test(address));
  const short = ofFamily('IPv4');
  const reached = short.length > 0 || host === '0.0.0.0' ? short : long;
  return { here: addressOf('127.0.0.1'), elsewhere: reached.map(({ address }) => addressOf(address)) };
}
