// A button says a verb of the trade. `primary` is the one action of a screen (rosin), `quiet` is outlined, `plain` is
// bare words.

import type { ReactNode } from 'react';
import { Button as AriaButton, type ButtonProps as AriaButtonProps } from 'react-aria-components';
import './button.css';

export type ButtonKind = 'primary' | 'quiet' | 'plain';

export interface ButtonProps extends Omit<AriaButtonProps, 'className' | 'style' | 'children' | 'isPending'> {
  readonly kind?: ButtonKind;
  /** 48 px and more, for a lesson's buttons. */
  readonly large?: boolean;
  /** Its work is under way: it keeps the focus and hears nothing more. A form's own handler must do as much. */
  readonly pending?: boolean;
  readonly className?: string;
  readonly children: ReactNode;
}

export function Button({
  kind = 'quiet',
  large = false,
  pending = false,
  className = '',
  onPress,
  ...rest
}: ButtonProps) {
  const looks = `button button-${kind}${large ? ' button-large' : ''}${pending ? ' button-pending' : ''}`;
  return (
    <AriaButton {...rest} {...(onPress && !pending ? { onPress } : {})} className={`${looks} ${className}`} />
  );
}
