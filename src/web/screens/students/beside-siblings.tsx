// Offers the times next to a sibling's lesson.

import { weekdays } from '#core';
import { Button } from '../../components/button.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { type Beside, type Place, placeAt } from './beside-sibling.ts';
import './siblings.css';

const says = words.students.beside;

export interface BesideSiblingsProps {
  readonly beside: Beside;
  /** What is chosen now. */
  readonly chosen: { readonly weekday: string; readonly time: string };
  readonly onPlace: (place: Place) => void;
}

/** Nothing where no sibling has a time in the week. */
export function BesideSiblings({ beside, chosen, onPlace }: BesideSiblingsProps) {
  const format = useFormat();
  if (beside.stands.length === 0) return null;
  const at = placeAt(beside, chosen);
  const day = (weekday: string) => {
    const found = weekdays.find((one) => String(one) === weekday);
    return found === undefined ? '' : format.weekday(found);
  };
  const comes = beside.stands.map(({ name, weekday, time }) =>
    says.comes(name, day(weekday), format.time(time)),
  );
  return (
    <div className="beside-siblings">
      <p className="soft">
        {at ? says.isBeside(at.name) : comes.join(' ')}
        {!at && beside.places.length === 0 && ` ${says.noRoom}`}
      </p>
      {!at &&
        beside.places.slice(0, 4).map((place) => (
          <Button key={place.weekday + place.time} kind="plain" onPress={() => onPlace(place)}>
            {says[place.side](place.name, day(place.weekday), format.time(place.time))}
          </Button>
        ))}
    </div>
  );
}
