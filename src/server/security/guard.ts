// What every request must show before a route sees it: a Host we answer to (against DNS rebinding), our own Origin on
// anything that changes data (against cross-site requests), and a session.

import { isIP } from 'node:net';
import type { MiddlewareHandler } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import type { Fault } from '#contract';
import type { Sessions } from './sessions.ts';

/**
 * Whether a Host header may be this server's, with any port: `localhost`, an allowed name, or an address in figures. Those are
 * always what the browser connected to; only a name can be bent to another machine than the one whose page asks.
 */
export function isKnownHost(host: string | undefined, allowed: readonly string[]): boolean {
  if (host === undefined) return false;
  const name = host.toLowerCase().replace(/:\d+$/, '');
  return name === 'localhost' || isIP(name.replace(/^\[(.*)\]$/, '$1')) !== 0 || allowed.includes(name);
}

/** Refuses foreign hosts, and foreign or missing origins on requests that change data. */
export function guardOrigin(allowed: readonly string[]): MiddlewareHandler {
  return async (c, next) => {
    const host = c.req.header('host');
    if (!isKnownHost(host, allowed))
      return c.json(
        refusal(
          'NotSignedIn',
          `This server does not answer to the name "${host ?? ''}". Use its address in figures, or allow the name where Levare runs: LEVARE_ALLOWED_HOSTS=name.`,
        ),
        421,
      );
    if (c.req.method !== 'GET' && c.req.method !== 'HEAD') {
      const origin = c.req.header('origin');
      if (origin === undefined || origin.replace(/^https?:\/\//, '') !== host)
        return c.json(refusal('NotSignedIn', 'This request came from another site and was refused.'), 403);
    }
    return next();
  };
}

/** Lets only signed-in browsers through. */
export function guardSession(sessions: Sessions): MiddlewareHandler {
  return async (c, next) => {
    const secret = getCookie(c, sessions.cookie);
    if (secret === undefined || !sessions.isKnown(secret))
      return c.json(
        refusal(
          'NotSignedIn',
          'This browser is not signed in. Open the link that Levare printed when it started.',
        ),
        401,
      );
    return next();
  };
}

/** The start-up link: trades the token for the cookie and goes to the first page. */
export function enter(sessions: Sessions): MiddlewareHandler {
  return async (c) => {
    const secret = sessions.redeem(c.req.query('token') ?? '');
    if (secret === null) {
      const known = getCookie(c, sessions.cookie);
      if (known !== undefined && sessions.isKnown(known)) return c.redirect('/', 303);
      return c.text(
        'This link has been used or is too old. Press Enter where Levare runs to get a new one.',
        403,
      );
    }
    setCookie(c, sessions.cookie, secret, {
      httpOnly: true,
      sameSite: 'Strict',
      path: '/',
      maxAge: 400 * 86_400,
    });
    return c.redirect('/', 303);
  };
}

const refusal = (kind: Fault['kind'], message: string): { readonly fault: Fault } => ({
  fault: { kind, message },
});
