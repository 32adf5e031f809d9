// axe-core inside the page: every rule of WCAG 2.x A and AA and its best practices.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeViolation {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly target: readonly unknown[]; readonly failureSummary?: string }[];
}

/** What axe finds on the page as it is now, one line per element. */
export async function findWithAxe(page: Page): Promise<readonly string[]> {
  // Evaluated through the debugger, which the page's content security policy does not govern.
  await page.evaluate(axeSource);
  const violations = await page.evaluate<readonly AxeViolation[]>(
    `window.axe.run(document, { resultTypes: ['violations'] }).then((found) => found.violations)`,
  );
  return violations.flatMap((v) =>
    v.nodes.map((n) => `${v.id}: ${v.help} at ${JSON.stringify(n.target)} ${n.failureSummary ?? ''}`),
  );
}
