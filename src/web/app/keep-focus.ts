// The focus is never lost: where what had it is taken away or put out of use, what stands nearest takes it up, so that keys
// and a screen reader go on from there and not from the top of the page (WCAG 2.2, success criterion 2.4.3).

import { nearestStaying } from './nearest-staying.ts';

const focusable = [
  'a[href]',
  'button:not(:disabled)',
  'input:not(:disabled):not([type=hidden])',
  'select:not(:disabled)',
  'textarea:not(:disabled)',
  'summary',
  '[tabindex]:not([tabindex="-1"])',
].join(', ');

/** What lies over the page for a while, and gives the focus back when it goes. */
const messages = '[data-react-aria-top-layer]';
const overlay = `[role=dialog], [role=alertdialog], [role=menu], [role=listbox], ${messages}`;
/** Within one of these the next control is as good a place as the one that went; beyond it, a title is better. */
const part = `${overlay}, section, article, form, fieldset, [role=group], table, ul, ol`;
const writing = 'textarea, select, input:not([type=checkbox]):not([type=radio])';

interface Held {
  readonly element: Element;
  /** Nearest first. */
  readonly around: readonly Element[];
  /** The part of the page it belonged to. */
  readonly part: Element | null;
  /** What it stands in that lies over the page. */
  readonly over: Element | null;
  /** The controls of the page when it got the focus, in order. */
  readonly order: readonly Element[];
}

const isThere = (element: Element): boolean =>
  element.isConnected && element.checkVisibility({ visibilityProperty: true });
const canHold = (element: Element): element is HTMLElement | SVGElement =>
  (element instanceof HTMLElement || element instanceof SVGElement) &&
  isThere(element) &&
  !element.matches(':disabled');

function hold(element: Element): Held {
  const around: Element[] = [];
  for (let at = element.parentElement; at; at = at.parentElement) around.push(at);
  return {
    element,
    around,
    part: element.parentElement?.closest(part) ?? null,
    over: element.closest(overlay),
    order: [...document.querySelectorAll(focusable)],
  };
}

/** The title of the part that an element belongs to, else the page's. */
function titleOver(element: Element | undefined): HTMLElement | null {
  const around = element?.closest('section, article, [role=dialog], main');
  return (
    around?.querySelector<HTMLElement>('h1, h2, h3') ?? document.querySelector<HTMLElement>('#page h1, #page')
  );
}

function focusOn(element: HTMLElement | SVGElement): void {
  // A title takes the focus only here: Tab passes it by.
  if (!element.matches(focusable) && !element.hasAttribute('tabindex'))
    element.setAttribute('tabindex', '-1');
  element.focus({ preventScroll: true });
  // A hand at the mouse is not taken away from where it points.
  if (element.matches(':focus-visible')) element.scrollIntoView({ block: 'nearest' });
}

/** Where the focus goes on to. */
function placeFor(held: Held | null): HTMLElement | SVGElement | null {
  if (!held) return titleOver(undefined);
  if (canHold(held.element)) return held.element;
  const stays = held.around.find(isThere);
  const within = held.part && isThere(held.part) ? held.part : null;
  // A field would open the keyboard of a telephone unasked.
  const fits = (one: Element) => canHold(one) && (held.element.matches(writing) || !one.matches(writing));
  const candidates = within ? [...within.querySelectorAll(focusable)] : [];
  const near = nearestStaying(held.order, held.element, candidates, fits);
  return near && canHold(near) ? near : titleOver(within ?? stays);
}

/** Watches the page from now on; returns how to stop. */
export function startKeepingFocus(): () => void {
  let held: Held | null = null;
  /** What had it before something came to lie over the page. */
  let under: Held | null = null;
  let isWaiting = false;

  const hear = ({ target }: FocusEvent) => {
    if (!(target instanceof Element) || target === document.body) return;
    const now = hold(target);
    if (now.over === null) under = null;
    else if (held?.over === null) under = held;
    held = now;
  };
  const lose = ({ target, relatedTarget }: FocusEvent) => {
    if (relatedTarget !== null || !(target instanceof Element)) return;
    // Let go by a touch beside it, the focus is not lost. What is taken away is gone by then.
    queueMicrotask(() => {
      if (document.hasFocus() && document.activeElement === document.body && canHold(target)) held = null;
    });
  };
  const look = () => {
    if (isWaiting || !held || document.activeElement !== document.body || canHold(held.element)) return;
    isWaiting = true;
    // A dialog that closes and a screen that knows better have their turn first.
    requestAnimationFrame(() =>
      requestAnimationFrame(() => {
        isWaiting = false;
        if (!held || document.activeElement !== document.body || canHold(held.element)) return;
        const { over } = held;
        // A message put away leads back, too: the next message is not what the hand was at.
        const isBack = over !== null && (!isThere(over) || over.matches(messages));
        const from = isBack ? under : held;
        held = under = null;
        const place = placeFor(from);
        if (place) focusOn(place);
      }),
    );
  };
  const watch = new MutationObserver(look);
  watch.observe(document, {
    subtree: true,
    childList: true,
    attributes: true,
    attributeFilter: ['disabled', 'hidden', 'open'],
  });
  document.addEventListener('focusin', hear);
  document.addEventListener('focusout', lose);
  return () => {
    watch.disconnect();
    document.removeEventListener('focusin', hear);
    document.removeEventListener('focusout', lose);
  };
}
