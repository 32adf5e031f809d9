// The addresses both sides of the wire agree on. GET answers a view, POST takes JSON. Refusals answer a FaultReply.
//
//   GET  /api/studio                          StudioView
//   GET  /api/days/:date                      DayView
//   GET  /api/lessons/:id                     LessonView
//   GET  /api/students                        StudentsView
//   GET  /api/students/:id                    StudentView
//   GET  /api/students/:id/erasure[?called=n]  ErasureView
//   GET  /api/students/:id/export             all that is kept of one student, as a file
//   GET  /api/students/:id/takes              TakesView
//   GET  /api/takes/:id                       TakeView
//   GET  /api/takes/:id/sound                 the sound of a take
//   GET  /api/courses/:id                     CourseView
//   POST /api/courses/:id/what-if             { commands } → WhatIfView (nothing saved)
//   GET  /api/units                           { units: UnitRow[] }
//   GET  /api/units/:id[?version=n]           UnitView
//   GET  /api/units/:id/file?form=yaml|json|md   the unit as a file to keep
//   GET  /api/course-units/:id                CourseUnitCompareView
//   GET  /api/skills                          SkillMapView
//   GET  /api/term                            TermView
//   GET  /api/changes                         ChangesView, newest first
//   POST /api/commands                        Send → CommandReply
//   POST /api/preview/students                { text, mapping? } → StudentImportPreview
//   POST /api/preview/holidays                { text, from, to } → HolidayImportPreview
//   POST /api/preview/units                   { text, form } → UnitImportPreview
//   POST /api/sheets/pdf                     SheetPdf → the sheet as a PDF file (nothing saved)
//   GET  /api/export                          the whole studio as one file
//   POST /api/import                          that file, into an empty studio
//   POST /api/demo                            founds the demo studio in an empty one
//   GET  /api/live                            server-sent events: { told } at first, { change, courses, told } after every change

import { z } from 'zod';
import { stages } from '#music';
import { instrument, seed } from './field.ts';
import { studentColumns } from './view/imports.ts';

export const previewStudentsSchema = z.strictObject({
  text: z.string().max(5_000_000, 'The file is larger than 5 MB; split it.'),
  mapping: z.array(z.enum(studentColumns).nullable()).max(100).optional(),
});
export const previewHolidaysSchema = z.strictObject({
  text: z.string().max(5_000_000, 'The file is larger than 5 MB.'),
  from: z.string().max(10),
  to: z.string().max(10),
});
export const previewUnitsSchema = z.strictObject({
  text: z.string().max(5_000_000, 'The file is larger than 5 MB.'),
  form: z.enum(['yaml', 'json']),
});
export type PreviewStudents = z.infer<typeof previewStudentsSchema>;
export type PreviewHolidays = z.infer<typeof previewHolidaysSchema>;
export type PreviewUnits = z.infer<typeof previewUnitsSchema>;

/** A sheet for one player, to be made into a PDF. The spec is read in full by `music`. */
export const sheetPdfSchema = z.strictObject({
  spec: z.unknown(),
  instrument,
  stage: z.enum(stages),
  age: z.int().min(0).max(120).nullable(),
  seed,
  paper: z.enum(['a4', 'letter']),
  /** How its description names note values. */
  noteNames: z.enum(['british', 'american']),
});
export type SheetPdf = z.infer<typeof sheetPdfSchema>;
