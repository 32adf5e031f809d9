// The input level as a bar that breathes, and in words: a sound check of a few seconds.

import { useEffect, useRef, useState } from 'react';
import { useHeard } from '../hooks/use-heard.ts';
import { words } from '../words/index.ts';
import type { Microphone } from './recorder.ts';
import './level-meter.css';

const say = words.takes.setUp;
/** Peaks as shares of full scale below which it is quiet, soft, right; above is nearly cut off. Common practice. */
const bounds = { quiet: 0.003, soft: 0.05, right: 0.9 } as const;

export interface LevelMeterProps {
  readonly microphone: Microphone;
  /** Not spoken while a take is recorded: a screen reader would be in it. */
  readonly silent?: boolean;
}

export function LevelMeter({ microphone, silent = false }: LevelMeterProps) {
  const bar = useRef<HTMLDivElement>(null);
  const [told, setTold] = useState<string>(say.levelQuiet);
  // Words that change with every breath are said when they have stood for a while.
  const heard = useHeard(silent ? null : told, told);
  useEffect(() => {
    let frame = 0;
    let shown = 0;
    let loudest = 0;
    let since = performance.now();
    const draw = (now: number) => {
      const level = microphone.level();
      loudest = Math.max(loudest, level);
      shown = Math.max(level, shown * 0.93);
      // On a scale of 60 dB.
      const share = shown <= 0.001 ? 0 : 1 + (20 * Math.log10(Math.min(1, shown))) / 60;
      bar.current?.style.setProperty('transform', `scaleX(${share.toFixed(3)})`);
      if (now - since > 800) {
        setTold(microphone.isMuted() ? say.muted : wordsFor(loudest));
        loudest = 0;
        since = now;
      }
      frame = requestAnimationFrame(draw);
    };
    frame = requestAnimationFrame(draw);
    return () => cancelAnimationFrame(frame);
  }, [microphone]);
  return (
    <div className="level-meter">
      <span>{say.level}</span>
      <div className="level-meter-frame" aria-hidden="true">
        <div ref={bar} className="level-meter-bar" />
      </div>
      <span className="soft">{told}</span>
      <span className="only-heard" role="status">
        {heard}
      </span>
    </div>
  );
}

function wordsFor(level: number): string {
  if (level < bounds.quiet) return say.levelQuiet;
  if (level < bounds.soft) return say.levelSoft;
  return level < bounds.right ? say.levelRight : say.levelLoud;
}
