// The minutes that a segment took: typed, stepped with the arrow keys, or with the buttons beside it, which go on while held.

import { Group, Input, NumberField, Text } from 'react-aria-components';
import type { LessonSegmentView } from '#contract';
import { Button } from '../../components/button.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { mostSeconds } from './lesson-clock.ts';

const mostMinutes = Math.floor(mostSeconds / 60);

export interface MinutesTookProps {
  readonly segment: LessonSegmentView;
  readonly minutes: number;
  readonly onMinutes: (minutes: number) => void;
}

export function MinutesTook({ segment, minutes, onMinutes }: MinutesTookProps) {
  const format = useFormat();
  const say = words.lesson.closing;
  const name = say.minutesOf(segment.title);
  const take = (wanted: number) => {
    // An emptied field is no number: what stood there comes back.
    if (Number.isInteger(wanted) && wanted >= 0 && wanted <= mostMinutes && wanted !== minutes)
      onMinutes(wanted);
  };
  return (
    <NumberField
      aria-label={name}
      value={minutes}
      onChange={take}
      minValue={0}
      maxValue={mostMinutes}
      step={1}
      formatOptions={{ useGrouping: false, maximumFractionDigits: 0 }}
      isWheelDisabled
    >
      <Group className="close-minutes" aria-label={name}>
        <Button slot="decrement" kind="plain" className="close-step" aria-label={say.fewer}>
          −
        </Button>
        <Input
          className="close-took"
          maxLength={String(mostMinutes).length}
          // What is typed takes the place of what stands there.
          onClick={(event) => event.currentTarget.select()}
        />
        <Text slot="description" className="close-of">
          <span aria-hidden="true">{say.ofMinutes(segment.minutes)}</span>
          <span className="only-heard">{say.plannedMinutes(format.minutes(segment.minutes))}</span>
        </Text>
        <Button slot="increment" kind="plain" className="close-step" aria-label={say.more}>
          +
        </Button>
      </Group>
    </NumberField>
  );
}
