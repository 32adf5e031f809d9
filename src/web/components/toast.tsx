// Messages at the foot of the page: what was done, with Undo. Spoken politely; they leave by themselves, faults stay.

import { useEffect, useSyncExternalStore } from 'react';
import { dropToast, onToasts, readToasts, type Toast } from '../app/toasts.ts';
import { words } from '../words/index.ts';
import { Button } from './button.tsx';
import './toast.css';

const shownFor = 9_000;

function ToastLine({ toast }: { readonly toast: Toast }) {
  useEffect(() => {
    if (toast.fault) return;
    const timer = window.setTimeout(() => dropToast(toast.key), shownFor);
    return () => window.clearTimeout(timer);
  }, [toast]);
  const { action } = toast;
  return (
    <li className={`toast${toast.fault ? ' toast-fault' : ''}`}>
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

/** The place where messages appear; the page frame holds one. */
export function Toasts() {
  const toasts = useSyncExternalStore(onToasts, readToasts);
  return (
    <section className="toasts no-print" aria-label={words.frame.messages} aria-live="polite">
      <ol>
        {toasts.map((toast) => (
          <ToastLine key={toast.key} toast={toast} />
        ))}
      </ol>
    </section>
  );
}
