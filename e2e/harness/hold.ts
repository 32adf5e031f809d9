import type { Page } from 'playwright-core';

/** Keeps what a page asks for at these addresses waiting, from now until all is let go. */
export async function hold(
  page: Page,
  addresses: string,
  when: 'before it is asked' | 'after it is answered',
): Promise<{
  /** The first was asked for, and where so wished answered, and waits. */
  readonly asked: Promise<void>;
  letGo(): void;
}> {
  let letGo = () => {};
  const isLetGo = new Promise<void>((done) => {
    letGo = done;
  });
  let isAsked = () => {};
  const asked = new Promise<void>((done) => {
    isAsked = done;
  });
  await page.route(addresses, async (route) => {
    const response = when === 'after it is answered' ? await route.fetch() : undefined;
    isAsked();
    await isLetGo;
    await (response === undefined ? route.continue() : route.fulfill({ response }));
  });
  return { asked, letGo };
}
