// The frame of every screen: where one is, the title, the state of what was written, undo, theme.

import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { useStudio } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { Button } from './button.tsx';
import { InkTextures } from './ink-textures.tsx';
import { SaveState } from './save-state.tsx';
import { ThemeSwitch } from './theme-switch.tsx';
import { Toasts } from './toast.tsx';
import { UndoButton } from './undo-button.tsx';
import './page.css';

const places: readonly { to: string; name: string; holds: readonly string[] }[] = [
  { to: '/', name: words.frame.day, holds: ['/day', '/lesson'] },
  { to: '/students', name: words.frame.students, holds: ['/students', '/student'] },
  { to: '/units', name: words.frame.units, holds: ['/units', '/unit', '/skills', '/course-unit'] },
  { to: '/materials', name: words.frame.materials, holds: ['/materials', '/band'] },
  { to: '/term', name: words.frame.term, holds: ['/term'] },
];

function isHere(place: (typeof places)[number], location: string): boolean {
  return location === place.to || place.holds.some((start) => `${location}/`.startsWith(`${start}/`));
}

function Navigation() {
  const [location] = useLocation();
  return (
    <nav aria-label={words.frame.navigation} className="places">
      <ul>
        {places.map((place) => (
          <li key={place.to}>
            <Link
              href={place.to}
              className="place"
              aria-current={isHere(place, location) ? 'page' : undefined}
            >
              {place.name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

export interface PageProps {
  /** The page's name: the browser's tab and the heading. */
  readonly title: string;
  /** Drawn in the heading's place instead of the title, for one that holds more than text. */
  readonly heading?: ReactNode;
  /** A sentence under the title. */
  readonly lead?: ReactNode;
  /** Facts between the title and its buttons; on a narrow page under it. */
  readonly beside?: ReactNode;
  /** Buttons at the right of the title; on a narrow page under it. */
  readonly actions?: ReactNode;
  /** The whole width of the window, for a score or a wide table. */
  readonly wide?: boolean;
  /** Without navigation and title: teaching mode and the welcome. Messages stay; it brings its own UndoButton. */
  readonly bare?: boolean;
  readonly children: ReactNode;
}

/** Where the last page stood; a browser begins a first page at its top by itself. */
let shownAt: string | null = null;

/**
 * Puts the focus on the page's title, where what had it is gone: who hears the page is told where they are and what came of
 * it, and keys go on from there.
 */
export function focusTitle(): void {
  if (document.activeElement !== document.body) return;
  const title = document.querySelector<HTMLElement>('#page h1') ?? document.getElementById('page');
  title?.setAttribute('tabindex', '-1');
  title?.focus({ preventScroll: true });
}

const isOnTitle = () => document.activeElement?.matches('#page h1') ?? false;

export function Page({
  title,
  heading,
  lead,
  beside,
  actions,
  wide = false,
  bare = false,
  children,
}: PageProps) {
  const studio = useStudio().data;
  const main = useRef<HTMLElement>(null);
  const [location] = useLocation();
  const last = useRef({ title, location });
  /** The title, where no focus that comes to it says it: the day turned to its neighbour, a name that has come at last. */
  const [heard, setHeard] = useState('');
  useEffect(() => {
    document.title = `${title} · ${words.frame.app}`;
    const { current: before } = last;
    last.current = { title, location };
    const isTurned = before.location !== location || isOnTitle();
    if (before.title !== title && isTurned && document.activeElement !== document.body) setHeard(title);
  }, [title, location]);
  useEffect(() => {
    const isElsewhere = shownAt !== null && shownAt !== location;
    shownAt = location;
    if (isElsewhere) focusTitle();
  }, [location]);
  return (
    <div className={`page${wide ? ' page-wide' : ''}${bare ? ' page-bare' : ''}`}>
      <Button kind="quiet" className="skip" onPress={() => main.current?.focus()}>
        {words.frame.skip}
      </Button>
      <InkTextures />
      {!bare && (
        <header className="head no-print">
          <p className="head-name">
            <Link href="/" className="head-app">
              {words.frame.app}
            </Link>
            {studio?.name && <span className="head-studio">{studio.name}</span>}
          </p>
          <Navigation />
          <div className="head-tools">
            <SaveState />
            <UndoButton />
            <Link href="/settings" className="head-link">
              {words.frame.settings}
            </Link>
            <ThemeSwitch labelHidden />
          </div>
        </header>
      )}
      <main id="page" className="main" ref={main} tabIndex={-1}>
        {!bare && (
          <div className="title-line">
            <div className="title-words">
              {heading ?? <h1 tabIndex={-1}>{title}</h1>}
              {lead && <p className="lead">{lead}</p>}
            </div>
            {beside}
            {actions && <div className="title-actions no-print">{actions}</div>}
          </div>
        )}
        {children}
      </main>
      <p className="only-heard" role="status">
        {heard}
      </p>
      <Toasts />
    </div>
  );
}
