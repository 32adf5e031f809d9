// A line between a browser and the studio that can go dead as a network does: nothing is refused and nothing is closed, it
// only says nothing any more. Once it is mended what was on its way arrives, as it does over TCP.

import { connect, createServer, type Socket } from 'node:net';

export interface Line {
  readonly port: number;
  /** From now on nothing gets through. */
  goDead(): void;
  mend(): void;
  close(): void;
}

/** A line from a free port at `host` to one on this machine. */
export function createLine(host: string, to: number): Promise<Line> {
  let isDead = false;
  const pairs = new Set<readonly [Socket, Socket]>();
  const join = ([near, far]: readonly [Socket, Socket]) => {
    near.pipe(far);
    far.pipe(near);
  };
  const server = createServer((near) => {
    const pair = [near, connect(to, '127.0.0.1')] as const;
    pairs.add(pair);
    for (const [at, end] of pair.entries()) {
      end.on('error', () => end.destroy());
      end.on('close', () => {
        if (!isDead) pair[1 - at]?.destroy();
        if (pair.every(({ destroyed }) => destroyed)) pairs.delete(pair);
      });
    }
    if (!isDead) join(pair);
  });
  return new Promise((done) => {
    server.listen(0, host, () => {
      const at = server.address();
      done({
        port: typeof at === 'object' && at !== null ? at.port : 0,
        goDead() {
          isDead = true;
          for (const end of [...pairs].flat()) end.unpipe().pause();
        },
        mend() {
          isDead = false;
          for (const pair of pairs)
            if (pair.some(({ destroyed }) => destroyed)) for (const end of pair) end.destroy();
            else join(pair);
        },
        close() {
          for (const end of [...pairs].flat()) end.destroy();
          server.close();
        },
      });
    });
  });
}
