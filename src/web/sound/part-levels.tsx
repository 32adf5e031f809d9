// Who is heard, and how loud: a fader for each part with mute beside it, for the players solo too, and the volume of all.

import type { PartName } from '#music';
import { Button } from '../components/button.tsx';
import { words } from '../words/index.ts';
import { Level } from './level.tsx';
import { type Mix, soloists, toggled } from './mix.ts';

const says = words.player;

export interface PartLevelsProps {
  readonly parts: readonly PartName[];
  readonly mix: Mix;
  readonly onMix: (mix: Mix) => void;
  /** 0 to 100. */
  readonly volume: number;
  readonly onVolume: (volume: number) => void;
}

export function PartLevels({ parts, mix, onMix, volume, onVolume }: PartLevelsProps) {
  return (
    <>
      <div className="part-levels">
        {parts.map((part) => (
          // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a frame and a legend of its own
          <div key={part} className="part-level" role="group" aria-label={says.parts[part]}>
            <Level
              name={says.parts[part]}
              value={mix.levels[part]}
              onValue={(value) => onMix({ ...mix, levels: { ...mix.levels, [part]: value } })}
            />
            <div className="part-switches">
              <Button
                large
                aria-pressed={mix.muted.has(part)}
                onPress={() => onMix({ ...mix, muted: toggled(mix.muted, part) })}
              >
                {says.mute}
              </Button>
              {soloists.has(part) && (
                <Button
                  large
                  aria-pressed={mix.solo.has(part)}
                  onPress={() => onMix({ ...mix, solo: toggled(mix.solo, part) })}
                >
                  {says.solo}
                </Button>
              )}
            </div>
          </div>
        ))}
        <div className="part-level">
          <Level name={says.volume} value={volume} onValue={onVolume} />
        </div>
      </div>
      <p className="soft band-player-caution">{says.caution}</p>
    </>
  );
}
