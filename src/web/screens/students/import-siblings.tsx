// Who in the file may be siblings, each set with a box to tick: nobody is made a sibling unasked.

import { Tick } from '../../components/tick.tsx';
import { words } from '../../words/index.ts';
import type { FoundSiblings } from './import-draft.ts';

const says = words.studentsImport;

export interface ImportSiblingsProps {
  readonly found: readonly FoundSiblings[];
  readonly isTicked: (found: FoundSiblings) => boolean;
  /** The import is under way: what is ticked now would come too late. */
  readonly pending: boolean;
  readonly onTick: (found: FoundSiblings, ticked: boolean) => void;
}

export function ImportSiblings({ found, isTicked, pending, onTick }: ImportSiblingsProps) {
  if (found.length === 0) return null;
  return (
    <fieldset className="import-siblings">
      <legend>{says.siblings}</legend>
      <p className="faint">{says.siblingsHelp}</p>
      <ul>
        {found.map((one) => (
          <li key={one.key}>
            <Tick ticked={isTicked(one)} pending={pending} onTick={(ticked) => onTick(one, ticked)}>
              {says.siblingNames(one.names)}{' '}
              <span className="faint">{one.why === 'column' ? says.byColumn : says.byContact}</span>
            </Tick>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}
