// Five noteheads to touch: which level was heard. A radio group; arrows move, Enter or Space choose.

import { Radio, RadioGroup } from 'react-aria-components';
import type { Level } from '#planning';
import { words } from '../words/index.ts';
import { LevelNote } from './level-note.tsx';
import './level-picker.css';

const all: readonly Level[] = [0, 1, 2, 3, 4];

export interface LevelPickerProps {
  /** What is judged, for the group's name: the skill's title. */
  readonly label: string;
  readonly level: Level | null;
  readonly onLevel: (level: Level) => void;
  /** The check's wanted level: marked with a line under it. */
  readonly wanted?: Level;
  /** Without the level's names under the notes. */
  readonly compact?: boolean;
}

export function LevelPicker({ label, level, onLevel, wanted, compact = false }: LevelPickerProps) {
  return (
    <RadioGroup
      className={`level-picker${compact ? ' level-picker-compact' : ''}`}
      aria-label={label}
      orientation="horizontal"
      value={level === null ? null : String(level)}
      onChange={(chosen) => {
        const found = all.find((l) => String(l) === chosen);
        if (found !== undefined) onLevel(found);
      }}
    >
      {all.map((l) => (
        <Radio
          key={l}
          value={String(l)}
          className={`level-choice${wanted === l ? ' level-wanted' : ''}`}
          aria-label={`${l}, ${words.levels[l].name}`}
        >
          <LevelNote level={l} size={32} decorative />
          {!compact && <span className="level-name">{words.levels[l].name}</span>}
        </Radio>
      ))}
    </RadioGroup>
  );
}
