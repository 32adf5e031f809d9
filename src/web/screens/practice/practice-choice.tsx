// What of a practice sheet can still be changed before it is printed: minutes a day, and what stands on it.

import { useState } from 'react';
import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { Tick } from '../../components/tick.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';
import type { PracticeMaterial } from './practice-materials.ts';

const says = words.practice;

export interface PracticeChoiceProps {
  readonly minutes: number;
  /** Usual for the age and stage. */
  readonly usual: number;
  readonly onMinutes: (typed: string) => void;
  readonly materials: readonly PracticeMaterial[];
  /** Whether it stands on this printing. */
  readonly isShown: (material: PracticeMaterial) => boolean;
  readonly onShown: (material: PracticeMaterial, shows: boolean) => void;
}

export function PracticeChoice(props: PracticeChoiceProps) {
  const { minutes, usual, onMinutes, materials, isShown, onShown } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const send = useCommand();
  return (
    <div className="practice-choose no-print">
      <TextField
        label={says.minutes}
        type="number"
        min={5}
        max={180}
        value={typed ?? String(minutes)}
        onValue={(value) => {
          setTyped(value);
          onMinutes(value);
        }}
        help={says.minutesHelp(usual)}
      />
      {materials.length > 0 && (
        <fieldset>
          <legend className="field-label">{says.which}</legend>
          {materials.map((material) => {
            const { id, title, kept, waits } = material;
            return (
              <div key={id} className="practice-choice">
                <Tick ticked={isShown(material)} onTick={(ticks) => onShown(material, ticks)}>
                  {title}
                  {waits && <span className="faint"> {says.waits}</span>}
                </Tick>
                {kept !== null && (
                  <Button
                    kind="plain"
                    aria-label={says.takeOffNamed(title)}
                    onPress={() => void send({ type: 'material.remove', material: kept })}
                  >
                    {says.takeOff}
                  </Button>
                )}
              </div>
            );
          })}
        </fieldset>
      )}
    </div>
  );
}
