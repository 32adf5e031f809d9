// Keeps what the band plays, on an activity or on one student's practice sheet.

import { useState } from 'react';
import type { BackingMaterial } from '#music';
import { Button } from '../../components/button.tsx';
import { words } from '../../words/index.ts';
import { KeepDialog } from '../materials/keep-dialog.tsx';

const says = words.player.band;

export interface KeepBackingProps {
  /** As read; null while there is nothing to play. */
  readonly material: BackingMaterial | null;
  /** As it is kept, with its chart at concert pitch. */
  readonly spec: Readonly<Record<string, unknown>>;
  readonly seed: number;
}

export function KeepBacking({ material, spec, seed }: KeepBackingProps) {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <>
      <Button isDisabled={material === null} onPress={() => setIsOpen(true)}>
        {says.keep}
      </Button>
      {material !== null && (
        <KeepDialog
          kind="backing"
          open={isOpen}
          onClose={() => setIsOpen(false)}
          title={material.title ?? says.usualTitle(says.feels[material.feel])}
          spec={spec}
          seed={seed}
          course={null}
        />
      )}
    </>
  );
}
