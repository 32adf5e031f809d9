// A link to another screen that looks like a button, or like a link of the text.

import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { ButtonKind } from './button.tsx';
import './button.css';

export interface ButtonLinkProps {
  readonly to: string;
  readonly kind?: ButtonKind;
  readonly large?: boolean;
  readonly children: ReactNode;
}

export function ButtonLink({ to, kind = 'quiet', large = false, children }: ButtonLinkProps) {
  return (
    <Link href={to} className={`button button-${kind}${large ? ' button-large' : ''}`}>
      {children}
    </Link>
  );
}
