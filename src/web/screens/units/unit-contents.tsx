// A unit's activities at a glance, in order, each a way down the page.

import type { UnitDocument } from '#planning';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';

const says = words.units.unit;

export function UnitContents({ unit }: { readonly unit: UnitDocument }) {
  const format = useFormat();
  if (unit.activities.length < 2) return null;
  return (
    <nav className="unit-contents" aria-label={says.glance}>
      <h2 className="unit-section">{says.glance}</h2>
      <ol>
        {unit.activities.map(({ key, title, minutes }) => (
          <li key={key}>
            <a className="unit-contents-way" href={`#${key}`}>
              {title}
            </a>
            <span className="unit-minutes">{format.minutes(minutes.usual)}</span>
          </li>
        ))}
      </ol>
    </nav>
  );
}
