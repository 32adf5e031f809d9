// What can be done with a unit.

import { useLocation } from 'wouter';
import type { UnitId } from '#planning';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { MenuButton } from '../../components/menu.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useStudents } from '../../hooks/use-view.ts';
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
  const learners = (useStudents().data?.students ?? []).filter((one) => one.courses.length > 0);
  return (
    <>
      <MenuButton
        label={says.keep}
        choices={forms.map((form) => ({
          label: says.keepAs[form],
          file: `/api/units/${encodeURIComponent(id)}/file?form=${form}`,
        }))}
      >
        <Button>{says.keep}</Button>
      </MenuButton>
      <MenuButton
        label={says.more}
        choices={[
          { label: says.duplicate, act: () => navigate(`/unit/new?like=${encodeURIComponent(id)}`) },
          {
            label: retired ? says.unretire : says.retire,
            act: () => void send({ type: 'unit.retire', unit: id, retired: !retired }),
          },
        ]}
      >
        <Button>{says.more}</Button>
      </MenuButton>
      <Button onPress={() => window.print()}>{says.print}</Button>
      {!retired && learners.length > 0 && (
        <MenuButton
          label={says.giveTo}
          choices={learners.map((one) => ({
            label: one.name,
            act: () => navigate(`/student/${one.id}?give=${encodeURIComponent(id)}`),
          }))}
        >
          <Button>{says.giveTo}</Button>
        </MenuButton>
      )}
      <ButtonLink to={`/unit/${id}?change`} kind="primary">
        {says.change}
      </ButtonLink>
    </>
  );
}
