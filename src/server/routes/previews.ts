// Imports are looked at before anything is saved.

import type { Handler } from 'hono';
import { previewHolidaysSchema, previewStudentsSchema, previewUnitsSchema } from '#contract';
import { listKnownStudents, previewHolidays, previewStudents, previewUnits, viewStudio } from '#studio';
import { refuse } from '../answer.ts';
import { readBody } from '../body.ts';
import type { ServerContext } from '../context.ts';

export function postStudentPreview(server: ServerContext): Handler {
  return async (c) => {
    const body = await readBody(c, previewStudentsSchema);
    if (!body.ok) return refuse(c, body.error);
    const { clock } = await server.outside();
    const existing = await server.store.read(listKnownStudents);
    const preview = previewStudents({ ...body.value, today: clock.today() }, existing);
    return preview.ok ? c.json(preview.value) : refuse(c, preview.error);
  };
}

export function postHolidayPreview(server: ServerContext): Handler {
  return async (c) => {
    const body = await readBody(c, previewHolidaysSchema);
    if (!body.ok) return refuse(c, body.error);
    const outside = await server.outside();
    const existing = await server.store.read((reader) => reader.list('holiday'));
    const { timeZone } = await server.store.read((reader) => viewStudio(reader, outside));
    return c.json(previewHolidays({ ...body.value, timeZone }, existing));
  };
}

export function postUnitPreview(server: ServerContext): Handler {
  return async (c) => {
    const body = await readBody(c, previewUnitsSchema);
    if (!body.ok) return refuse(c, body.error);
    const { text, form } = body.value;
    return c.json(await server.store.read((reader) => previewUnits(reader, text, form)));
  };
}
