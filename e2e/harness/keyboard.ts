// Hands that know no mouse: everything goes through the keys, and what the focus is on is only read.

import type { Locator, Page } from 'playwright-core';
import type { PlainDate, PlainTime } from '#core';

/** More stops than any page has. */
const mostStops = 250;

export function createKeyboard(page: Page) {
  const press = (key: string) => page.keyboard.press(key);
  const type = (text: string) => page.keyboard.type(text);
  const isOn = async (wanted: Locator) => (await wanted.and(page.locator(':focus')).count()) > 0;
  const valueNow = () =>
    page.evaluate(() => {
      const at = document.activeElement;
      return at instanceof HTMLInputElement ||
        at instanceof HTMLTextAreaElement ||
        at instanceof HTMLSelectElement
        ? at.value
        : null;
    });
  const nameNow = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');

  /** Whether what stands at the foot of the page hides all of what has the focus (WCAG 2.2, success criterion 2.4.11). */
  const isCovered = () =>
    page.evaluate(() => {
      const at = document.activeElement;
      const box = at?.getBoundingClientRect();
      if (!at || !box || box.height === 0) return false;
      const shares = [0.02, 0.5, 0.98];
      return shares.every((across) =>
        shares.every((down) => {
          const over = document.elementFromPoint(box.x + box.width * across, box.y + box.height * down);
          const foot = over?.closest('.toasts, .editor-foot, .close-do, .lesson-foot') ?? null;
          return foot !== null && !foot.contains(at);
        }),
      );
    });

  /** Presses Tab until the focus is on one of these. */
  async function tabTo(wanted: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
    await wanted.first().waitFor({ state: 'attached' });
    for (let stop = 0; stop <= mostStops; stop++) {
      if (await isOn(wanted)) {
        if (await isCovered())
          throw new Error(`The focus is on ${wanted}, covered by what stands at the foot`);
        return;
      }
      await press(key);
    }
    throw new Error(
      `Tab never came to ${wanted}; it is at ${await page.evaluate(() => document.activeElement?.outerHTML.slice(0, 200))}`,
    );
  }
  /** Types a date or a time in the order in which this browser asks for its parts. */
  async function typeParts(wanted: string, ways: readonly string[]): Promise<void> {
    for (const way of ways) {
      await type(way);
      if ((await valueNow()) === wanted) return;
      // Back to the first part of the same field.
      for (let part = 0; part < 6; part++) await press('ArrowLeft');
    }
    throw new Error(`${wanted} cannot be typed here: ${await valueNow()}`);
  }
  return {
    press,
    type,
    isOn,
    nameNow,
    valueNow,
    tabTo,
    /** Presses Tab to a control and acts on it with Enter. */
    async act(wanted: Locator, key = 'Enter'): Promise<void> {
      await tabTo(wanted);
      await press(key);
    },
    /** Presses Tab to a field and types into it. */
    async write(field: Locator, text: string): Promise<void> {
      await tabTo(field);
      await press('ControlOrMeta+a');
      await type(text);
    },
    async writeDate(field: Locator, date: PlainDate): Promise<void> {
      const [year = '', month = '', day = ''] = date.split('-');
      await tabTo(field);
      await typeParts(date, [day + month + year, month + day + year, year + month + day]);
    },
    async writeTime(field: Locator, time: PlainTime): Promise<void> {
      const [hour = '', minute = ''] = time.split(':');
      const twelve = String(((Number(hour) + 11) % 12) + 1).padStart(2, '0');
      await tabTo(field);
      await typeParts(time, [hour + minute, `${twelve}${minute}${Number(hour) < 12 ? 'a' : 'p'}`]);
    },
    /** Chooses in a list by the first letters of an option, as a list of the platform takes them. */
    async choose(select: Locator, option: string): Promise<void> {
      await tabTo(select);
      await type(option);
    },
  };
}
