// One view, one address: read from one consistent state, shaped by studio, sent as it is.

import type { Context } from 'hono';
import type { Fault } from '#contract';
import { isDate, type Result } from '#core';
import {
  type Outside,
  type Reader,
  viewChanges,
  viewCourse,
  viewCourseUnit,
  viewDay,
  viewLesson,
  viewSkills,
  viewStudent,
  viewStudents,
  viewStudio,
  viewTerm,
  viewUnit,
  viewUnits,
} from '#studio';
import { refuse } from '../answer.ts';
import type { ServerContext } from '../context.ts';
import { readId } from './read-id.ts';

type ViewOf<T> = (reader: Reader, outside: Outside) => Promise<T>;

/** A view that is always there. */
export const getView =
  <T extends object>(server: ServerContext, view: ViewOf<T>) =>
  async (c: Context) => {
    const outside = await server.outside();
    return c.json(await server.store.read((reader) => view(reader, outside)));
  };

/** A view of one thing, which may be missing. */
export const getViewOf =
  <P extends string, T extends object>(
    server: ServerContext,
    prefix: P,
    view: (
      reader: Reader,
      id: `${P}:${string}` & { readonly __brand: P },
      outside: Outside,
      c: Context,
    ) => Promise<T | null>,
  ) =>
  async (c: Context) => {
    const id = readId(c, prefix);
    if (!id.ok) return refuse(c, id.error);
    const outside = await server.outside();
    const found = await server.store.read((reader) => view(reader, id.value, outside, c));
    return found === null
      ? refuse(c, {
          kind: 'NotFound',
          message: `There is no such ${prefix.replace('-', ' ')}; it may have been removed.`,
        })
      : c.json(found);
  };

export const getDay = (server: ServerContext) => async (c: Context) => {
  const date = c.req.param('date') ?? '';
  if (!isDate(date))
    return refuse(c, {
      kind: 'Invalid',
      message: `"${date.slice(0, 40)}" is not a day; write YYYY-MM-DD.`,
      field: 'date',
    });
  return getView(server, (reader, outside) => viewDay(reader, date, outside))(c);
};
