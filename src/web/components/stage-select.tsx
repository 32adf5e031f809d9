import { type Stage, stages } from '#planning';
import { words } from '../words/index.ts';
import { SelectField } from './field.tsx';

export interface StageSelectProps {
  readonly label: string;
  readonly value: Stage;
  readonly onValue: (value: Stage) => void;
}

export function StageSelect({ label, value, onValue }: StageSelectProps) {
  return (
    <SelectField
      label={label}
      value={value}
      onValue={onValue}
      options={stages.map((stage) => ({ value: stage, label: words.stageNames[stage] }))}
    />
  );
}
