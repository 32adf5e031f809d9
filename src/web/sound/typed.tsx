// A field whose text stays as typed until it is left; whoever asked hears what can be read of it.

import { useState } from 'react';
import { TextField } from '../components/field.tsx';

export interface TypedProps {
  readonly label: string;
  readonly value: string;
  readonly help?: string;
  /** Says what would do. */
  readonly fault: string;
  readonly number?: { readonly min: number; readonly max: number };
  /** False where the text cannot be read. */
  readonly onValue: (text: string) => boolean;
}

export function Typed({ label, value, help, fault, number, onValue }: TypedProps) {
  const [typed, setTyped] = useState<{ readonly text: string; readonly isRead: boolean } | null>(null);
  return (
    <TextField
      label={label}
      value={typed?.text ?? value}
      fault={typed === null || typed.isRead ? null : fault}
      {...(help === undefined ? {} : { help })}
      {...(number === undefined ? {} : { type: 'number' as const, ...number })}
      onValue={(text) => setTyped({ text, isRead: onValue(text) })}
      onBlur={() => setTyped((now) => (now?.isRead ? null : now))}
    />
  );
}
