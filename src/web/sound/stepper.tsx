// Less, what it is, more: for a thumb.

import { Button } from '../components/button.tsx';

export interface StepperProps {
  readonly name: string;
  readonly text: string;
  readonly less: string;
  readonly more: string;
  readonly onStep: (by: 1 | -1) => void;
}

export function Stepper({ name, text, less, more, onStep }: StepperProps) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a frame and a legend of its own
    <div className="stepper" role="group" aria-label={name}>
      <span className="field-label">{name}</span>
      <div className="stepper-line">
        <Button large aria-label={less} onPress={() => onStep(-1)}>
          −
        </Button>
        <output className="stepper-value">{text}</output>
        <Button large aria-label={more} onPress={() => onStep(1)}>
          +
        </Button>
      </div>
    </div>
  );
}
