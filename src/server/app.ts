// The application as one function from request to reply: headers, guards, routes, and the one place where a failure
// nobody foresaw is caught, logged and answered without its inner workings.

import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { compress } from 'hono/compress';
import { secureHeaders } from 'hono/secure-headers';
import { toldHeader } from '#contract';
import { explainTrouble } from '#storage';
import {
  viewChanges,
  viewCourse,
  viewCourseUnit,
  viewLesson,
  viewSkills,
  viewStudent,
  viewStudents,
  viewStudio,
  viewTake,
  viewTakes,
  viewTerm,
  viewUnits,
} from '#studio';
import { refuse } from './answer.ts';
import type { ServerContext } from './context.ts';
import { postCommand, postWhatIf } from './routes/commands.ts';
import { postDemo } from './routes/demo.ts';
import { getErasure, getStudentFile } from './routes/erasing.ts';
import { getExport, getUnitFile, postImport } from './routes/files.ts';
import { streamLive } from './routes/live.ts';
import { postHolidayPreview, postStudentPreview, postUnitPreview } from './routes/previews.ts';
import { postSheetPdf } from './routes/sheet-pdf.ts';
import { getSound } from './routes/sounds.ts';
import { getDay, getUnit, getView, getViewOf } from './routes/views.ts';
import { enter, guardOrigin, guardSession } from './security/guard.ts';
import type { Sessions } from './security/sessions.ts';
import { serveScreens } from './static.ts';

export interface AppOptions {
  readonly sessions: Sessions;
  readonly allowedHosts: readonly string[];
  /** Folder of the built screens. */
  readonly screens: string;
}

const megabyte = 1024 * 1024;

/** The whole application. */
export function createApp(server: ServerContext, { sessions, allowedHosts, screens }: AppOptions): Hono {
  const app = new Hono();
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"], // the engraver is WebAssembly; no script is made from text
        styleSrc: ["'self'"],
        fontSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        mediaSrc: ["'self'", 'blob:'],
        connectSrc: ["'self'"],
        workerSrc: ["'self'"],
        manifestSrc: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
      crossOriginResourcePolicy: 'same-origin',
      crossOriginOpenerPolicy: 'same-origin',
      referrerPolicy: 'no-referrer',
      strictTransportSecurity: false, // plain HTTP on loopback
      permissionsPolicy: { camera: [], geolocation: [], payment: [], microphone: ['self'] },
    }),
  );
  app.use(guardOrigin(allowedHosts));
  app.get('/enter', enter(sessions));

  const api = new Hono();
  api.use(guardSession(sessions));
  api.use(async (c, next) => {
    c.header('cache-control', 'no-store');
    // Before anything is read, so that no change is counted that the answer does not hold.
    c.header(toldHeader, String(server.hub.told()));
    return next();
  });
  api.get('/live', streamLive(server.hub)); // before compression, which would hold events back
  api.use(compress());
  const limit = (bytes: number) =>
    bodyLimit({
      maxSize: bytes,
      onError: (c) =>
        refuse(c, {
          kind: 'TooLarge',
          message: `That is more than ${Math.round(bytes / megabyte)} MB; send less at once.`,
        }),
    });

  api.get('/studio', getView(server, viewStudio));
  api.get('/days/:date', getDay(server));
  api.get('/lessons/:id', getViewOf(server, 'lesson', viewLesson));
  api.get('/students', getView(server, viewStudents));
  api.get('/students/:id', getViewOf(server, 'student', viewStudent));
  api.get('/students/:id/erasure', getErasure(server));
  api.get('/students/:id/export', getStudentFile(server));
  api.get('/students/:id/takes', getViewOf(server, 'student', viewTakes));
  api.get('/takes/:id', getViewOf(server, 'take', viewTake));
  api.get('/takes/:id/sound', getSound(server));
  api.get('/courses/:id', getViewOf(server, 'course', viewCourse));
  api.post('/courses/:id/what-if', limit(megabyte), postWhatIf(server));
  api.get('/units', getView(server, viewUnits));
  api.get('/units/:id', getUnit(server));
  api.get('/units/:id/file', getUnitFile(server));
  api.get('/course-units/:id', getViewOf(server, 'course-unit', viewCourseUnit));
  api.get('/skills', getView(server, viewSkills));
  api.get('/term', getView(server, viewTerm));
  api.get(
    '/changes',
    getView(server, (reader) => viewChanges(reader)),
  );
  api.post('/commands', limit(16 * megabyte), postCommand(server)); // a take comes with its sound
  api.post('/preview/students', limit(6 * megabyte), postStudentPreview(server));
  api.post('/preview/holidays', limit(6 * megabyte), postHolidayPreview(server));
  api.post('/preview/units', limit(6 * megabyte), postUnitPreview(server));
  api.post('/sheets/pdf', limit(megabyte), postSheetPdf);
  api.get('/export', getExport(server));
  api.post('/demo', postDemo(server));
  api.post('/import', limit(400 * megabyte), postImport(server));
  api.all('*', (c) => refuse(c, { kind: 'NotFound', message: `There is nothing at ${c.req.path}.` }));
  app.route('/api', api);

  app.get('*', serveScreens(screens));

  app.onError((error, c) => {
    const trouble = explainTrouble(error);
    if (trouble !== null) {
      server.log(trouble);
      return refuse(c, { kind: 'CannotKeep', message: trouble });
    }
    const mark = Math.floor(Date.now() % 1e8).toString(36);
    server.log(`[${mark}] ${c.req.method} ${c.req.path}: ${error.stack ?? error.message}`);
    return refuse(c, {
      kind: 'Broken',
      message: `Something in Levare went wrong; nothing was changed. It is noted where Levare runs, under the mark ${mark}.`,
    });
  });
  return app;
}
