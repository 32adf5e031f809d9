// The sound of a kept take, to start and to stop.

import { useEffect, useMemo, useState } from 'react';
import type { TakeRow } from '#contract';
import { Button } from '../components/button.tsx';
import { words } from '../words/index.ts';
import { createSamplePlayer } from './play-samples.ts';
import { useTakeSound } from './use-take-sound.ts';

const say = words.takes.result;

export interface HearTakeProps {
  readonly take: TakeRow;
  /** What the take is called, for the button's name. */
  readonly name: string;
}

/** Nothing where no sound is kept. */
export function HearTake({ take, name }: HearTakeProps) {
  const sound = useTakeSound(take);
  const [isPlaying, setPlaying] = useState(false);
  const player = useMemo(() => (sound === null ? null : createSamplePlayer(sound)), [sound]);
  useEffect(() => () => player?.close(), [player]);
  if (player === null) return null;
  return (
    <Button
      aria-label={`${isPlaying ? say.stop : say.hear}: ${name}`}
      onPress={() =>
        isPlaying ? player.stop() : player.play(0, take.seconds, (at) => setPlaying(at !== null))
      }
    >
      {isPlaying ? say.stop : say.hear}
    </Button>
  );
}
