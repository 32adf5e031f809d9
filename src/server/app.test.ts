import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Fault, StudioView } from '#contract';
import { createFixedClock, createSeededRandom, type PlainDate } from '#core';
import { createMemoryStore } from '#storage';
import { coursePlanner, type Outside, type Store } from '#studio';
import { createApp } from './app.ts';
import { readLibrary } from './library/read-library.ts';
import { createHub, type LiveNews } from './live/hub.ts';
import { createSessions } from './security/sessions.ts';

const screens = mkdtempSync(join(tmpdir(), 'levare-screens-'));
const host = '127.0.0.1:4380';
const clock = createFixedClock('2026-11-25' as PlainDate);
const logged: string[] = [];
let app: ReturnType<typeof createApp>;
let sessions: ReturnType<typeof createSessions>;
let cookie: string;
let store: Store;
let outside: Outside;
const realHub = createHub(1000);
let listeners = 0;
const hub: typeof realHub = {
  ...realHub,
  listen(hear) {
    listeners++;
    const stop = realHub.listen(hear);
    return () => {
      listeners--;
      stop();
    };
  },
};
const countListeners = () => listeners;

beforeAll(async () => {
  writeFileSync(join(screens, 'index.html'), '<!doctype html><title>Levare</title>');
  const library = await readLibrary(join(import.meta.dirname, '../../library'));
  if (!library.ok) throw new Error(library.error.message);
  store = await createMemoryStore(clock);
  outside = { clock, random: createSeededRandom(1), planner: coursePlanner, starter: library.value };
  sessions = createSessions(null, () => 0);
  app = createApp(
    { store, outside: async () => outside, hub, copies: null, log: (line) => logged.push(line) },
    { sessions, allowedHosts: [], screens },
  );
  const entered = await request(`/enter?token=${sessions.createToken()}`, { cookie: '' });
  cookie = entered.headers.get('set-cookie')?.split(';')[0] ?? '';
});
afterAll(() => rmSync(screens, { recursive: true }));

interface RequestOptions {
  readonly method?: string;
  readonly body?: string;
  readonly cookie?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

function request(path: string, options: RequestOptions = {}) {
  const { method = 'GET', body, headers = {} } = options;
  return app.request(`http://${host}${path}`, {
    method,
    headers: {
      host,
      cookie: options.cookie ?? cookie,
      ...(method === 'GET' ? {} : { origin: `http://${host}`, 'content-type': 'application/json' }),
      ...headers,
    },
    ...(body === undefined ? {} : { body }),
  });
}

const post = (path: string, body: unknown, headers: Readonly<Record<string, string>> = {}) =>
  request(path, { method: 'POST', body: typeof body === 'string' ? body : JSON.stringify(body), headers });

async function faultOf(reply: Response): Promise<Fault> {
  return ((await reply.json()) as { fault: Fault }).fault;
}

const found = (id: string) => ({
  id,
  command: {
    type: 'studio.found',
    name: 'Quay Street',
    teacher: '',
    timeZone: 'Europe/Lisbon',
    locale: 'en-GB',
    starterUnits: false,
  },
});

test('a start-up link works once and gives a strict, script-proof cookie', async () => {
  const link = `/enter?token=${sessions.createToken()}`;
  const first = await request(link, { cookie: '' });
  expect(first.status).toBe(303);
  expect(first.headers.get('set-cookie')).toMatch(/HttpOnly/);
  expect(first.headers.get('set-cookie')).toMatch(/SameSite=Strict/);
  expect((await request(link, { cookie: '' })).status).toBe(403);
});

test('nothing of the studio is told without a session', async () => {
  for (const path of ['/api/studio', '/api/export', '/api/live', '/api/no-such']) {
    const reply = await request(path, { cookie: `${sessions.cookie}=guess` });
    expect(reply.status, path).toBe(401);
    expect((await faultOf(reply)).kind).toBe('NotSignedIn');
  }
});

test('a foreign Host is refused, so that a rebound name cannot reach the studio', async () => {
  expect((await request('/api/studio', { headers: { host: 'evil.example:4380' } })).status).toBe(421);
  expect((await request('/', { headers: { host: 'evil.example' } })).status).toBe(421);
  for (const name of ['192.0.2.20.evil.example', '1.evil', '[evil]', ''])
    expect((await request('/', { headers: { host: name } })).status, name).toBe(421);
});

test('an address in figures is answered to: a tablet in the studio’s network has no other', async () => {
  for (const address of ['192.0.2.20:4380', '192.0.2.20', '[2001:db8::20]:4380', '[::1]'])
    expect((await request('/api/studio', { headers: { host: address } })).status, address).toBe(200);
  const crossSite = { host: '192.0.2.20:4380', origin: 'http://evil.example' };
  expect((await post('/api/commands', {}, crossSite)).status).toBe(403);
});

test('a change from another site, or from nowhere, is refused', async () => {
  for (const origin of [
    'http://evil.example',
    'null',
    'http://127.0.0.1:9999',
    'http://127.0.0.1:4380.evil.example',
  ])
    expect((await post('/api/commands', found('change:evil'), { origin })).status, origin).toBe(403);
});

test('the policy forbids inline script and every foreign source', async () => {
  const policy = (await request('/')).headers.get('content-security-policy') ?? '';
  expect(policy).toContain("default-src 'none'");
  expect(policy).toContain("script-src 'self'");
  expect(policy).not.toMatch(/'unsafe-(inline|eval|hashes)'/); // 'wasm-unsafe-eval' compiles WebAssembly alone (CSP Level 3)
});

test('a command is carried out once, told to every window, and answered alike when sent again', async () => {
  const heard: LiveNews[] = [];
  const stop = hub.listen((news) => heard.push(news));
  const once = await post('/api/commands', found('change:found1'));
  const again = await post('/api/commands', found('change:found1'));
  stop();
  expect(once.status).toBe(200);
  expect(await again.json()).toEqual(await once.json());
  expect(heard[0]).toMatchObject({ event: 'change', change: 'change:found1' });
  expect(((await (await request('/api/studio')).json()) as StudioView).name).toBe('Quay Street');
});

test('bad input of any kind is refused in words, without inner workings', async () => {
  const bad: readonly [string, unknown, number][] = [
    ['/api/commands', '{', 422],
    ['/api/commands', 'null', 422],
    ['/api/commands', { id: 'change:a', command: { type: 'no.such' } }, 422],
    ['/api/commands', { id: 'lesson:a', command: { type: 'undo', change: 'change:a' } }, 422],
    ['/api/commands', { id: 'change:b', command: { type: 'undo', change: 'change:none' } }, 404],
    [
      '/api/commands',
      { id: 'change:c', command: { type: 'lesson.cancel', lesson: 'lesson:none', reason: '' } },
      404,
    ],
    ['/api/courses/course:none/what-if', { commands: [] }, 422],
    ['/api/preview/holidays', { text: 'x', from: 'y', to: 'z' }, 200],
    ['/api/commands', '{"id":"change:d","command":{"type":"skill.remove","skill":"\\u0000"}}', 422],
    ['/api/commands', '['.repeat(100_000) + ']'.repeat(100_000), 422],
    ['/api/commands', `${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)}`, 422],
    ['/api/import', 'not json', 422],
    ['/api/import', { format: 'levare-studio/1', tables: {} }, 422],
  ];
  for (const [path, body, status] of bad) {
    const reply = await post(path, body);
    const text = await reply.text();
    expect(reply.status, `${path} ${JSON.stringify(body)} → ${text}`).toBe(status);
    expect(text).not.toMatch(/\bat .*\.(ts|js):\d+/);
  }
  for (const path of [
    '/api/days/tomorrow',
    '/api/lessons/lesson:none',
    '/api/students/x',
    '/api/units/unit:none?version=0',
  ])
    expect((await request(path)).status, path).toBeGreaterThanOrEqual(404);
  expect(logged).toEqual([]);
});

const sheet = {
  spec: { kind: 'scale', title: 'Two quiet scales' },
  instrument: 'alto_sax',
  stage: 'elementary',
  age: 12,
  seed: 3,
  paper: 'a4',
  noteNames: 'british',
};

test('a sheet is given as a PDF to who is signed in, the same each time, with its title', async () => {
  const reply = await post('/api/sheets/pdf', sheet);
  expect(reply.headers.get('content-type')).toBe('application/pdf');
  expect(reply.headers.get('content-disposition')).toContain('attachment');
  const pdf = Buffer.from(await reply.arrayBuffer());
  expect(pdf.toString('latin1', 0, 5)).toBe('%PDF-');
  expect(pdf.toString('latin1')).toContain('/Title (Two quiet scales)'); // ISO 32000-1, 14.3.3, table 317
  const again = await post('/api/sheets/pdf', sheet);
  expect(Buffer.from(await again.arrayBuffer()).equals(pdf)).toBe(true);
});

test('a PDF that cannot be made, or is asked for from elsewhere, is refused in words', async () => {
  const status = async (body: unknown, headers = {}) => (await post('/api/sheets/pdf', body, headers)).status;
  expect(await status(sheet, { origin: 'http://evil.example' })).toBe(403);
  expect(await status(sheet, { cookie: `${sessions.cookie}=guess` })).toBe(401);
  expect(await status({ ...sheet, instrument: 'kazoo' })).toBe(422);
  expect(await status({ ...sheet, more: 1 })).toBe(422);
  expect(await status({ ...sheet, title: 'x'.repeat(1_100_000) })).toBe(413);
  const fault = await faultOf(
    await post('/api/sheets/pdf', { ...sheet, spec: { kind: 'scale', octaves: 9 } }),
  );
  expect(fault).toMatchObject({ kind: 'Invalid', field: 'spec/octaves' });
});

test('too large a body is refused before it is read', async () => {
  expect((await post('/api/commands', 'x'.repeat(17_000_000))).status).toBe(413);
});

test('screens are served for any address without an extension, files only from their folder', async () => {
  expect((await request('/student/student:x')).headers.get('content-type')).toContain('text/html');
  for (const path of ['/../package.json', '/%2e%2e/package.json', '/..%2f..%2fetc/passwd.json', '/%00.html'])
    expect((await request(path)).status, path).toBe(404);
});

test('a full disk is told as such, not as a fault of ours', async () => {
  const full = createApp(
    {
      store: {
        ...store,
        change: () =>
          Promise.reject(Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' })),
      },
      outside: async () => outside,
      hub,
      copies: null,
      log: () => {},
    },
    { sessions, allowedHosts: [], screens },
  );
  const reply = await full.request(`http://${host}/api/commands`, {
    method: 'POST',
    headers: { host, cookie, origin: `http://${host}` },
    body: JSON.stringify(found('change:full')),
  });
  expect(reply.status).toBe(507);
  expect(await faultOf(reply)).toMatchObject({
    kind: 'CannotKeep',
    message: expect.stringMatching(/disk .* full/),
  });
});

test('asked for its head alone, the live line ends at once', async () => {
  const before = countListeners();
  const reply = await request('/api/live', { method: 'HEAD' });
  expect(reply.status).toBe(200);
  expect(await reply.text()).toBe('');
  expect(countListeners()).toBe(before);
});

test('answers and the live line count what was told alike, so that a page knows what it read before a change', async () => {
  const countOf = async () => Number((await request('/api/studio')).headers.get('levare-told'));
  const before = await countOf();
  expect(before).toBeGreaterThanOrEqual(1000);
  const reply = await request('/api/live');
  const reader = reply.body?.getReader();
  const next = async () => new TextDecoder().decode((await reader?.read())?.value);
  expect(await next()).toBe(`event: hello\ndata: {"told":${before}}\n\n`);
  hub.tell({ event: 'progress', work: 'demo', share: 0.5 });
  hub.tell({ event: 'change', change: 'change:told', courses: [] });
  expect((await next()) + (await next())).toContain(
    `data: {"change":"change:told","courses":[],"told":${before + 1}}`,
  );
  expect(await countOf()).toBe(before + 1);
  await reader?.cancel();
});

test('an exported studio is refused by one that is not empty, and half of one in words', async () => {
  const file = await (await request('/api/export')).text();
  expect((await faultOf(await post('/api/import', file))).kind).toBe('NotEmpty');
  // A page sends what was chosen as it is.
  const cutOff = await post('/api/import', file.slice(0, 20));
  expect(cutOff.status).toBe(422);
  expect((await faultOf(cutOff)).message).toMatch(/^This file ends too early, at line 1, column 21, /);
});
