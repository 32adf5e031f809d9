// Rows of a list moved by a grip: dragged with mouse, pen or finger, or stepped with the arrow keys.

import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { placeOfPointer } from './reorder.ts';

interface Drag {
  readonly from: number;
  readonly to: number;
}

export interface RowDrag {
  /** For the list whose children are the rows. */
  readonly listRef: (list: HTMLElement | null) => void;
  /** Where the dragged row would go: a line before or after this row, or nothing. */
  readonly markOf: (at: number) => 'before' | 'after' | null;
  readonly draggedAt: number | null;
  readonly gripProps: (at: number) => {
    readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerUp: () => void;
    readonly onPointerCancel: () => void;
    readonly onKeyDown: (event: KeyboardEvent<HTMLElement>) => void;
  };
}

/** `onMove` is told the old and the new place. */
export function useRowDrag(onMove: (from: number, to: number) => void): RowDrag {
  const list = useRef<HTMLElement | null>(null);
  const [drag, setDrag] = useState<Drag | null>(null);
  const placeAt = (from: number, y: number) =>
    placeOfPointer(
      [...(list.current?.children ?? [])].map((row) => {
        const { top, height } = row.getBoundingClientRect();
        return top + height / 2;
      }),
      from,
      y,
    );
  return {
    listRef: (found) => {
      list.current = found;
    },
    draggedAt: drag?.from ?? null,
    markOf: (at) => {
      if (!drag || drag.to === drag.from || drag.to !== at) return null;
      return drag.to < drag.from ? 'before' : 'after';
    },
    gripProps: (at) => ({
      onPointerDown: (event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        setDrag({ from: at, to: at });
      },
      onPointerMove: (event) => {
        if (drag) setDrag({ from: drag.from, to: placeAt(drag.from, event.clientY) });
      },
      onPointerUp: () => {
        if (drag && drag.to !== drag.from) onMove(drag.from, drag.to);
        setDrag(null);
      },
      onPointerCancel: () => setDrag(null),
      onKeyDown: (event) => {
        if (event.key === 'Escape') setDrag(null);
        if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
        event.preventDefault();
        onMove(at, event.key === 'ArrowUp' ? at - 1 : at + 1);
      },
    }),
  };
}
