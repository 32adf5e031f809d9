// A short list of what can be done, beside what it is done to.

import type { ReactNode } from 'react';
import { Menu, MenuItem, MenuTrigger, Popover, type PopoverProps } from 'react-aria-components';
import './menu.css';

export interface MenuChoice {
  readonly label: string;
  readonly act?: () => void;
  /** Downloads what is at this address instead. */
  readonly file?: string;
  /** It makes no sense just now. */
  readonly off?: boolean;
}

interface MenuSheetProps extends Pick<PopoverProps, 'triggerRef' | 'isOpen' | 'onOpenChange' | 'placement'> {
  /** Heard as the name of the menu. */
  readonly label: string;
  readonly choices: readonly MenuChoice[];
}

/** The list itself, for whoever opens it by other means than a button. */
export function MenuSheet({ label, choices, ...popover }: MenuSheetProps) {
  // Two students may have one name.
  const rows = choices.map((choice, at) => ({ ...choice, key: `${at} ${choice.label}` }));
  return (
    <Popover {...popover} className="menu">
      <Menu
        aria-label={label}
        autoFocus="first"
        disabledKeys={rows.filter((row) => row.off).map((row) => row.key)}
      >
        {rows.map(({ key, label: name, act, file }) => (
          <MenuItem
            key={key}
            id={key}
            textValue={name}
            className="menu-item"
            {...(act ? { onAction: act } : {})}
            {...(file ? { href: file, download: true } : {})}
          >
            {name}
          </MenuItem>
        ))}
      </Menu>
    </Popover>
  );
}

/** A button and the list it opens. */
export function MenuButton({
  label,
  choices,
  children,
}: Pick<MenuSheetProps, 'label' | 'choices'> & {
  /** The Button. */
  readonly children: ReactNode;
}) {
  return (
    <MenuTrigger>
      {children}
      <MenuSheet label={label} choices={choices} placement="bottom end" />
    </MenuTrigger>
  );
}
