import { useId } from 'react';
import type { ToldText } from './kept-field.ts';
import { useKeptText } from './use-kept-text.ts';

export interface KeptNoteProps {
  readonly id?: string;
  readonly told: ToldText;
  readonly label: string;
  readonly post: (base: string, text: string) => void;
  readonly placeholder?: string;
  readonly rows?: number;
}

/** A note that is saved as it is typed. Escape leaves it. */
export function KeptNote({ id, told, label, post, placeholder, rows = 1 }: KeptNoteProps) {
  const text = useKeptText(told, post);
  const own = useId();
  return (
    <div className="kept-note">
      <label htmlFor={id ?? own} className="lesson-label">
        {label}
      </label>
      <textarea
        id={id ?? own}
        className="kept-note-text"
        rows={rows}
        placeholder={placeholder}
        value={text.value()}
        onChange={(event) => text.change(event.target.value)}
        onFocus={text.take}
        onBlur={text.leave}
        onKeyDown={(event) => {
          if (event.key === 'Escape') event.currentTarget.blur();
        }}
      />
    </div>
  );
}
