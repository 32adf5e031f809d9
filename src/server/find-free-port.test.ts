import { createServer } from 'node:net';
import { expect, onTestFinished, test } from 'vitest';
import { findFreePort } from './find-free-port.ts';

test('a port that another holds is told, with the next to try; when it is let go, it is free', async () => {
  const other = createServer();
  onTestFinished(() => void other.close());
  const port = await new Promise<number>((done) => {
    other.listen(0, '127.0.0.1', () => {
      const at = other.address();
      done(typeof at === 'object' && at !== null ? at.port : 0);
    });
  });
  const config = { host: '127.0.0.1', port };
  expect(await findFreePort(config)).toEqual({
    ok: false,
    error: `Port ${port} is taken; Levare may be running already. Give another: --port ${port + 1}.`,
  });
  await new Promise((done) => other.close(done));
  expect(await findFreePort(config)).toEqual({ ok: true, value: null });
});

test('an address that is not of this machine is told', async () => {
  // 192.0.2.0/24 is for documentation: RFC 5737, section 3.
  const found = await findFreePort({ host: '192.0.2.1', port: 4380 });
  expect(found).toMatchObject({
    ok: false,
    error: expect.stringMatching(/^The address 192\.0\.2\.1:4380 cannot/),
  });
});
