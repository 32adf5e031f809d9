// Takes back the last change, whoever's it was; the keyboard's way is Ctrl or Cmd with Z outside a text field.

import { useEffect } from 'react';
import { undoLast } from '../app/send.ts';
import { words } from '../words/index.ts';
import { Button } from './button.tsx';

const writes = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || target.matches('input, textarea, select, [role="textbox"]'));

export function UndoButton() {
  useEffect(() => {
    const hear = (event: KeyboardEvent) => {
      if (event.key.toLowerCase() !== 'z' || event.shiftKey || event.altKey) return;
      if (!(event.ctrlKey || event.metaKey) || event.defaultPrevented || writes(event.target)) return;
      event.preventDefault();
      void undoLast();
    };
    window.addEventListener('keydown', hear);
    return () => window.removeEventListener('keydown', hear);
  }, []);
  return (
    <Button kind="plain" aria-label={words.frame.undoLast} onPress={() => void undoLast()}>
      {words.frame.undo}
    </Button>
  );
}
