// One view, one address: read from one consistent state, shaped by studio, sent as it is.

import type { Context, Handler } from 'hono';
import { type Id, isDate } from '#core';
import { type Outside, type Reader, viewDay, viewUnit } from '#studio';
import { refuse } from '../answer.ts';
import type { ServerContext } from '../context.ts';
import { readId } from './read-id.ts';

/** A view that is always there. */
export function getView(
  server: ServerContext,
  view: (reader: Reader, outside: Outside) => Promise<object>,
): Handler {
  return async (c) => {
    const outside = await server.outside();
    return c.json(await server.store.read((reader) => view(reader, outside)));
  };
}

/** A view of one thing, which may be missing. */
export function getViewOf<P extends string>(
  server: ServerContext,
  prefix: P,
  view: (reader: Reader, id: Id<P>, outside: Outside) => Promise<object | null>,
): Handler {
  return async (c) => {
    const id = readId(c, prefix);
    if (!id.ok) return refuse(c, id.error);
    const outside = await server.outside();
    return orMissing(c, prefix, await server.store.read((reader) => view(reader, id.value, outside)));
  };
}

export function getDay(server: ServerContext): Handler {
  return async (c) => {
    const date = c.req.param('date') ?? '';
    if (!isDate(date))
      return refuse(c, {
        kind: 'Invalid',
        message: `"${date.slice(0, 40)}" is not a day; write YYYY-MM-DD.`,
        field: 'date',
      });
    const outside = await server.outside();
    return c.json(await server.store.read((reader) => viewDay(reader, date, outside)));
  };
}

/** The newest version of a unit, or the one asked for with `?version=n`. */
export function getUnit(server: ServerContext): Handler {
  return async (c) => {
    const id = readId(c, 'unit');
    if (!id.ok) return refuse(c, id.error);
    const version = c.req.query('version');
    if (version !== undefined && !/^[1-9]\d{0,8}$/.test(version))
      return refuse(c, {
        kind: 'Invalid',
        message: 'version must be a whole number from 1.',
        field: 'version',
      });
    return orMissing(
      c,
      'unit',
      await server.store.read((reader) =>
        viewUnit(reader, id.value, version === undefined ? undefined : Number(version)),
      ),
    );
  };
}

function orMissing(c: Context, prefix: string, found: object | null) {
  if (found !== null) return c.json(found);
  const what = prefix.replace('-', ' ');
  return refuse(c, {
    kind: 'NotFound',
    message: `There is no such ${what} any more; it may have been removed.`,
  });
}
