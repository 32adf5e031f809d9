// Messages at the foot of the page: what was done, with Undo. Spoken politely; they leave by themselves, faults stay.

import { useEffect, useLayoutEffect, useRef, useState, useSyncExternalStore } from 'react';
import { dropToast, onToasts, readToasts, type Toast } from '../app/toasts.ts';
import { words } from '../words/index.ts';
import { Button } from './button.tsx';
import './toast.css';

const shownFor = 9_000;

function ToastLine({ toast }: { readonly toast: Toast }) {
  /** Pointed at, or its buttons walked to: nobody is hurried (WCAG 2.2, success criterion 2.2.1). */
  const [isHeld, setHeld] = useState(false);
  useEffect(() => {
    if (toast.fault || isHeld) return;
    const timer = window.setTimeout(() => dropToast(toast.key), shownFor);
    return () => window.clearTimeout(timer);
  }, [toast, isHeld]);
  const { action } = toast;
  return (
    <li
      className={`toast${toast.fault ? ' toast-fault' : ''}`}
      onPointerEnter={() => setHeld(true)}
      onPointerLeave={() => setHeld(false)}
      onFocus={() => setHeld(true)}
      onBlur={() => setHeld(false)}
    >
      <div className="toast-words">
        <p>{toast.text}</p>
        {toast.notices.map((notice) => (
          <p key={notice} className="soft">
            {notice}
          </p>
        ))}
      </div>
      {action && (
        <Button
          kind="plain"
          onPress={() => {
            dropToast(toast.key);
            action.act();
          }}
        >
          {action.label}
        </Button>
      )}
      <Button kind="plain" onPress={() => dropToast(toast.key)}>
        {words.frame.dismiss}
      </Button>
    </li>
  );
}

/** The place where messages appear; the page frame holds one. `--toasts` is their height, so that nothing stays under them. */
export function Toasts() {
  const toasts = useSyncExternalStore(onToasts, readToasts);
  const place = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const element = place.current;
    if (!element) return;
    const root = document.documentElement;
    const observer = new ResizeObserver(() =>
      root.style.setProperty('--toasts', `${Math.ceil(element.getBoundingClientRect().height)}px`),
    );
    observer.observe(element);
    return () => {
      observer.disconnect();
      root.style.removeProperty('--toasts');
    };
  }, []);
  return (
    <section
      ref={place}
      className="toasts no-print"
      aria-label={words.frame.messages}
      aria-live="polite"
      // An open dialog hides the page from screen readers, but not what its refusal says.
      data-react-aria-top-layer
    >
      <ol>
        {toasts.map((toast) => (
          <ToastLine key={toast.key} toast={toast} />
        ))}
      </ol>
    </section>
  );
}
