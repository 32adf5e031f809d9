// Whole minutes: typed, stepped with the arrow keys, or with the buttons beside them, which go on while held.

import type { ReactNode } from 'react';
import { Group, Input, NumberField, Text } from 'react-aria-components';
import { Button } from '../../components/button.tsx';
import { words } from '../../words/index.ts';

export interface MinutesFieldProps {
  readonly label: string;
  readonly minutes: number;
  readonly least: number;
  readonly most: number;
  readonly onMinutes: (minutes: number) => void;
  /** What stands behind the number: its unit, or what was planned. */
  readonly children: ReactNode;
}

export function MinutesField({ label, minutes, least, most, onMinutes, children }: MinutesFieldProps) {
  const say = words.lesson.closing;
  const take = (wanted: number) => {
    // An emptied field is no number: what stood there comes back.
    if (Number.isInteger(wanted) && wanted >= least && wanted <= most && wanted !== minutes)
      onMinutes(wanted);
  };
  return (
    <NumberField
      aria-label={label}
      value={minutes}
      onChange={take}
      minValue={least}
      maxValue={most}
      step={1}
      formatOptions={{ useGrouping: false, maximumFractionDigits: 0 }}
      isWheelDisabled
    >
      <Group className="close-minutes" aria-label={label}>
        <Button slot="decrement" kind="plain" className="close-step" aria-label={say.fewer}>
          −
        </Button>
        <Input
          className="close-took"
          maxLength={String(most).length}
          // What is typed takes the place of what stands there.
          onClick={(event) => event.currentTarget.select()}
        />
        <Text slot="description" className="close-of">
          {children}
        </Text>
        <Button slot="increment" kind="plain" className="close-step" aria-label={say.more}>
          +
        </Button>
      </Group>
    </NumberField>
  );
}
