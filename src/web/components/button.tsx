// A button says a verb of the trade. `primary` is the one action of a screen (rosin), `quiet` is outlined, `plain` is
// bare words.

import type { ReactNode } from 'react';
import { Button as AriaButton, type ButtonProps as AriaButtonProps } from 'react-aria-components';
import './button.css';

export type ButtonKind = 'primary' | 'quiet' | 'plain';

export interface ButtonProps extends Omit<AriaButtonProps, 'className' | 'style' | 'children'> {
  readonly kind?: ButtonKind;
  /** 48 px and more, for a lesson's buttons. */
  readonly large?: boolean;
  readonly className?: string;
  readonly children: ReactNode;
}

export function Button({ kind = 'quiet', large = false, className = '', ...rest }: ButtonProps) {
  return (
    <AriaButton {...rest} className={`button button-${kind}${large ? ' button-large' : ''} ${className}`} />
  );
}
