// The studio and its units as files: out for keeping, in again without loss.

import type { Context } from 'hono';
import { unitToMarkdown, writeUnitJson, writeUnitYaml } from '#planning';
import { parseDump } from '#storage';
import { loadUnitFile } from '#studio';
import { refuse } from '../answer.ts';
import type { ServerContext } from '../context.ts';
import { readId } from './read-id.ts';

export const getUnitFile = (server: ServerContext) => async (c: Context) => {
  const id = readId(c, 'unit');
  if (!id.ok) return refuse(c, id.error);
  const file = await server.store.read((reader) => loadUnitFile(reader, id.value));
  if (file === null)
    return refuse(c, { kind: 'NotFound', message: 'There is no such unit; it may have been removed.' });
  const name = id.value.slice('unit:'.length);
  switch (c.req.query('form') ?? 'yaml') {
    case 'json':
      return download(c, `${name}.json`, 'application/json', writeUnitJson(file));
    case 'md':
      return download(
        c,
        `${name}.md`,
        'text/markdown',
        unitToMarkdown(file.unit, new Map(file.skills.map((s) => [s.id, s]))),
      );
    case 'yaml':
      return download(c, `${name}.yaml`, 'application/yaml', writeUnitYaml(file));
    default:
      return refuse(c, { kind: 'Invalid', message: 'form must be yaml, json or md.', field: 'form' });
  }
};

export const getExport = (server: ServerContext) => async (c: Context) => {
  const { clock } = await server.outside();
  const dump = await server.store.dump();
  return download(c, `levare-${clock.today()}.json`, 'application/json', JSON.stringify(dump));
};

export const postImport = (server: ServerContext) => async (c: Context) => {
  const dump = parseDump(await c.req.text());
  if (!dump.ok) return refuse(c, { kind: 'Invalid', message: dump.error });
  const loaded = await server.store.load(dump.value);
  if (!loaded.ok)
    return refuse(c, {
      kind: 'NotEmpty',
      message: `This studio already holds ${loaded.error.rows} rows. A whole studio can only be read into an empty one.`,
    });
  server.hub.tell({ event: 'change', change: '', courses: [] });
  return c.json({ loaded: true });
};

/** Answers with a file to keep. */
export function download(c: Context, name: string, type: string, body: string) {
  c.header('content-type', `${type}; charset=utf-8`);
  c.header('content-disposition', `attachment; filename="${name}"`);
  return c.body(body);
}
