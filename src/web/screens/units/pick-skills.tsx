// Skills of a unit being written: chosen from the map, or written into it on the spot.

import { useState } from 'react';
import type { Area, Stage } from '#planning';
import { SkillDialog } from './skill-dialog.tsx';
import { SkillPicker, type SkillPickerProps } from './skill-picker.tsx';

export interface PickSkillsProps extends Omit<SkillPickerProps, 'onNew'> {
  /** What a new skill begins with. */
  readonly begin: { readonly area: Area; readonly stage: Stage };
}

export function PickSkills({ begin, ...picker }: PickSkillsProps) {
  const [writing, setWriting] = useState<string | null>(null);
  return (
    <>
      <SkillPicker {...picker} onNew={setWriting} />
      {writing !== null && (
        <SkillDialog
          known={null}
          begin={{ ...begin, title: writing }}
          onClose={(skill) => {
            setWriting(null);
            if (skill) picker.onChosen([...picker.chosen, skill]);
          }}
        />
      )}
    </>
  );
}
