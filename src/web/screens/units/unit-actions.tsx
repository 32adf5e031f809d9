// What can be done with a unit.

import { Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { useLocation } from 'wouter';
import type { UnitId } from '#planning';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';

const says = words.units.unit;
const forms = ['yaml', 'json', 'md'] as const;

export interface UnitActionsProps {
  readonly id: UnitId;
  readonly retired: boolean;
}

export function UnitActions({ id, retired }: UnitActionsProps) {
  const [, navigate] = useLocation();
  const send = useCommand();
  return (
    <>
      <MenuTrigger>
        <Button>{says.keep}</Button>
        <Popover className="editor-menu" placement="bottom end">
          <Menu aria-label={says.keep}>
            {forms.map((form) => (
              <MenuItem
                key={form}
                className="editor-menu-item"
                href={`/api/units/${encodeURIComponent(id)}/file?form=${form}`}
                download
              >
                {says.keepAs[form]}
              </MenuItem>
            ))}
          </Menu>
        </Popover>
      </MenuTrigger>
      <MenuTrigger>
        <Button>{says.more}</Button>
        <Popover className="editor-menu" placement="bottom end">
          <Menu aria-label={says.more}>
            <MenuItem
              className="editor-menu-item"
              onAction={() => navigate(`/unit/new?like=${encodeURIComponent(id)}`)}
            >
              {says.duplicate}
            </MenuItem>
            <MenuItem
              className="editor-menu-item"
              onAction={() => void send({ type: 'unit.retire', unit: id, retired: !retired })}
            >
              {retired ? says.unretire : says.retire}
            </MenuItem>
          </Menu>
        </Popover>
      </MenuTrigger>
      <Button onPress={() => window.print()}>{says.print}</Button>
      <ButtonLink to={`/unit/${id}?change`} kind="primary">
        {says.change}
      </ButtonLink>
    </>
  );
}
