// A fader: how loud, from nothing to full.

import { Label, Slider, SliderOutput, SliderThumb, SliderTrack } from 'react-aria-components';

export interface LevelProps {
  readonly name: string;
  /** 0 to 100. */
  readonly value: number;
  readonly onValue: (value: number) => void;
}

export function Level({ name, value, onValue }: LevelProps) {
  return (
    <Slider className="level" minValue={0} maxValue={100} step={5} value={value} onChange={onValue}>
      <Label className="field-label">{name}</Label>
      <SliderOutput className="level-value" />
      <SliderTrack className="level-track">
        <SliderThumb className="level-thumb" />
      </SliderTrack>
    </Slider>
  );
}
