// The band at hand: play, stop, go round bars, tempo, key, count-in, balance; the bar that sounds lights up on the chart.

import { useEffect, useMemo, useRef, useState } from 'react';
import { type BackingMaterial, backingToSpec } from '#music';
import { Button } from '../components/button.tsx';
import { SelectField } from '../components/field.tsx';
import { words } from '../words/index.ts';
import { BarChart, type BarRange } from './bar-chart.tsx';
import { gainByFeel } from './feel-gain.ts';
import { Level } from './level.tsx';
import { usePlayer } from './use-player.ts';
import { usePlayerKeys } from './use-player-keys.ts';
import './band-player.css';

const says = words.player;
const parts = ['bass', 'keys', 'drums'] as const;

export interface BandPlayerProps {
  /** As read by `parseBackingMaterial`. */
  readonly spec: BackingMaterial;
  readonly seed: number;
  /**
   * Whether the player is what the page is for: then space and pedal are its own anywhere on it, and Play is the primary
   * action. Else they are only while the focus is inside it.
   */
  readonly keysOnPage: boolean;
  /** Hears which bar of the chart sounds: 0 is the count-in, null is silence. */
  readonly onBar?: (bar: number | null) => void;
}

export function BandPlayer({ spec: given, seed, keysOnPage, onBar }: BandPlayerProps) {
  const { player, state } = usePlayer();
  const [tempo, setTempo] = useState(given.tempo);
  const [key, setKey] = useState(given.transpose);
  const [countIn, setCountIn] = useState(given.countIn);
  const [chosen, setChosen] = useState<{ readonly chart: string; readonly range: BarRange | null } | null>(
    null,
  );
  const range = chosen?.chart === given.chart ? chosen.range : null; // another chart has other bars
  const setRange = (next: BarRange | null) => setChosen({ chart: given.chart, range: next });
  const [levels, setLevels] = useState({ bass: given.bass, keys: given.keyboard, drums: given.drums });
  const [volume, setVolume] = useState(60);
  const place = useRef<HTMLElement>(null);
  useEffect(() => setTempo(given.tempo), [given.tempo]);
  useEffect(() => setKey(given.transpose), [given.transpose]);

  // Everybody plays, and the faders say who is heard: so a part comes and goes while the band plays on.
  const spec = useMemo(
    () => backingToSpec({ ...given, tempo, transpose: key, countIn, bass: 100, keyboard: 100, drums: 100 }),
    [given, tempo, key, countIn],
  );
  useEffect(() => {
    player?.load({ spec, seed, loop: range }, gainByFeel[spec.feel]);
  }, [player, spec, seed, range]);
  useEffect(() => {
    for (const part of parts) player?.balance(part, (levels[part] / 100) ** 2);
  }, [player, levels]);
  useEffect(() => player?.volume((volume / 60) ** 2), [player, volume]);
  useEffect(() => onBar?.(state.bar), [onBar, state.bar]);

  const isPlaying = state.status === 'playing';
  const toggle = () => {
    if (isPlaying) player?.stop();
    else void player?.play();
  };
  usePlayerKeys(toggle, keysOnPage, place);
  return (
    <section className="band-player" ref={place} aria-label={says.band.title} data-late={state.late}>
      <div className="band-player-line">
        <Button
          kind={keysOnPage ? 'primary' : 'quiet'}
          large
          isDisabled={state.status === 'failed'}
          onPress={toggle}
        >
          {isPlaying ? says.stop : says.play}
        </Button>
        <Stepper
          name={says.tempo}
          text={String(tempo)}
          less={says.slower}
          more={says.faster}
          onStep={(by) => setTempo((now) => Math.min(320, Math.max(30, now + 4 * by)))}
        />
        <Stepper
          name={says.key}
          text={key === 0 ? says.asTyped : says.semitones(key)}
          less={says.lower}
          more={says.higher}
          onStep={(by) => setKey((now) => Math.min(11, Math.max(-11, now + by)))}
        />
        <SelectField
          label={says.countIn}
          value={String(countIn) as keyof typeof says.counts}
          onValue={(value) => setCountIn(value === 'fit' ? 'fit' : Number(value))}
          options={(['fit', '0', '1', '2'] as const).map((value) => ({ value, label: says.counts[value] }))}
        />
      </div>
      <p className="band-player-state soft" role="status">
        {state.status === 'loading' ? says.loading : null}
        {state.status === 'failed' ? says.failed : null}
        {isPlaying && state.bar === 0 ? says.counting : null}
        {range !== null ? ` ${says.round(range.first, range.last)}` : null}
      </p>
      <BarChart chart={spec.chart} bar={state.bar} range={range} onRange={setRange} />
      <p className="soft">
        {says.loopHelp} {says.keys}
        {range !== null && (
          <Button kind="plain" onPress={() => setRange(null)}>
            {says.wholeChart}
          </Button>
        )}
      </p>
      <details>
        <summary>{says.levels}</summary>
        <div className="band-player-levels">
          {parts.map((part) => (
            <Level
              key={part}
              name={says.parts[part]}
              value={levels[part]}
              onValue={(value) => setLevels((now) => ({ ...now, [part]: value }))}
            />
          ))}
          <Level name={says.volume} value={volume} onValue={setVolume} />
        </div>
        <p className="soft band-player-caution">{says.caution}</p>
      </details>
    </section>
  );
}

interface StepperProps {
  readonly name: string;
  readonly text: string;
  readonly less: string;
  readonly more: string;
  readonly onStep: (by: 1 | -1) => void;
}

function Stepper({ name, text, less, more, onStep }: StepperProps) {
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
