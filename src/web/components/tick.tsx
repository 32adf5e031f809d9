// A box to tick, with its sentence.

import type { ReactNode } from 'react';
import { Checkbox } from 'react-aria-components';
import './tick.css';

export interface TickProps {
  readonly ticked: boolean;
  readonly onTick: (ticked: boolean) => void;
  readonly disabled?: boolean;
  /** What it belongs to is under way: it keeps the focus and stays as it is. */
  readonly pending?: boolean;
  /** The name read out, where the words beside it are not enough. */
  readonly label?: string;
  readonly children?: ReactNode;
}

export function Tick({ ticked, onTick, disabled = false, pending = false, label, children }: TickProps) {
  return (
    <Checkbox
      className="tick"
      isSelected={ticked}
      onChange={onTick}
      isDisabled={disabled}
      isReadOnly={pending}
      {...(label === undefined ? {} : { 'aria-label': label })}
    >
      <svg className="tick-box" viewBox="0 0 20 20" aria-hidden="true">
        <rect x="1.5" y="1.5" width="17" height="17" rx="2" />
        {ticked && <path d="M4.5 10.5 8.5 14.5 15.5 5.5" />}
      </svg>
      {children && <span>{children}</span>}
    </Checkbox>
  );
}
