// What to make: one of seven kinds, in a line.

import { memo } from 'react';
import { Radio, RadioGroup } from 'react-aria-components';
import { type MaterialKind, materialKinds } from '#music';
import { words } from '../../words/index.ts';

const says = words.materials;

export interface KindChooserProps {
  readonly kind: MaterialKind;
  readonly onKind: (kind: MaterialKind) => void;
}

/** Drawn anew only when the kind changes. */
export const KindChooser = memo(function KindChooser({ kind, onKind }: KindChooserProps) {
  return (
    <div className="kinds">
      <RadioGroup
        aria-label={says.kind}
        className="kinds-line"
        orientation="horizontal"
        value={kind}
        onChange={(chosen) => {
          const found = materialKinds.find((one) => one === chosen);
          if (found) onKind(found);
        }}
      >
        {materialKinds.map((one) => (
          <Radio key={one} value={one} className="kind">
            {says.kinds[one]}
          </Radio>
        ))}
      </RadioGroup>
      <p className="soft kinds-lead">{says.kindLeads[kind]}</p>
    </div>
  );
});
