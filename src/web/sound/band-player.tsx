// The band at hand: play, stop, go round bars, tempo, key, count-in, balance, and how it plays; the bar that sounds lights
// up on the chart, which stands as the student reads it.

import { useEffect, useMemo, useRef, useState } from 'react';
import {
  type BackingMaterial,
  type BackingTune,
  backingToSpec,
  chartKey,
  chorusChart,
  formatKey,
  type Instrument,
  type Key,
  type PartName,
  parseBackingMaterial,
  readerChart,
  readsTransposed,
} from '#music';
import { Button } from '../components/button.tsx';
import { SelectField } from '../components/field.tsx';
import { Tick } from '../components/tick.tsx';
import { useAwake } from '../hooks/use-awake.ts';
import { words } from '../words/index.ts';
import { BandModes } from './band-modes.tsx';
import { BarChart } from './bar-chart.tsx';
import { gainByFeel } from './feel-gain.ts';
import { type Mix, shareOf, toggled } from './mix.ts';
import { PartLevels } from './part-levels.tsx';
import { Stepper } from './stepper.tsx';
import { type Following, useFollowing } from './use-following.ts';
import { usePlayer } from './use-player.ts';
import { usePlayerKeys } from './use-player-keys.ts';
import { useSame } from './use-same.ts';
import './band-player.css';

const says = words.player;
const speeds = ['50', '60', '70', '80', '90', '100'] as const;

export interface BandPlayerProps {
  /** As read by `parseBackingMaterial`. */
  readonly spec: BackingMaterial;
  readonly seed: number;
  /**
   * Whether the player is what the page is for: then space and pedal are its own anywhere on it, and Play is the primary
   * action. Else they are only while the focus is inside it.
   */
  readonly keysOnPage: boolean;
  /** Who reads the chart; null reads what sounds. */
  readonly reader: Instrument | null;
  /** Shared with sheets that follow. */
  readonly following?: Following;
  /** What stands on the sheet, to be played along with the band when wanted. */
  readonly tune?: BackingTune | null;
  /** Whether only Play and the tempo stand open, as beside something that must be read; the rest unfolds. */
  readonly isBrief?: boolean;
  /** Whether how the band plays is chosen elsewhere on the page. */
  readonly modesElsewhere?: boolean;
  /** Hears by how many semitones the chart is moved here. */
  readonly onTranspose?: (semitones: number) => void;
  /** Hears the tempo set here; slowing down for a while is not one. */
  readonly onTempo?: (tempo: number) => void;
  readonly onCountIn?: (countIn: BackingMaterial['countIn']) => void;
}

export function BandPlayer(props: BandPlayerProps) {
  const { seed, keysOnPage, reader, isBrief = false, modesElsewhere = false, tune = null } = props;
  const asked = useSame(props.spec);
  const { given, fault, change } = useChanges(asked);
  const { player, state } = usePlayer();
  const [tempo, setTempo] = useState(given.tempo);
  const [key, setKey] = useState(given.transpose);
  const [countIn, setCountIn] = useState(given.countIn);
  const own = useFollowing(given.chart);
  const { place: heard, loop, goRound, setPlace } = props.following ?? own;
  const [mix, setMix] = useState<Mix>(() => mixOf(given));
  const [volume, setVolume] = useState(60);
  const place = useRef<HTMLElement>(null);
  useEffect(() => setTempo(given.tempo), [given.tempo]);
  useEffect(() => setKey(given.transpose), [given.transpose]);
  useEffect(() => setCountIn(given.countIn), [given.countIn]);

  // Everybody plays, and the faders say who is heard: so a part comes and goes while the band plays on.
  const made = useMemo(
    () => ({
      ...backingToSpec({ ...given, tempo, transpose: key, countIn, bass: 100, keyboard: 100, drums: 100 }),
      tune: tune === null ? null : tuneMoved(tune, key),
    }),
    [given, tempo, key, countIn, tune],
  );
  const spec = useSame(made); // a title changes nothing that is heard
  const hasTone = spec.drone !== null || spec.tuning !== null;
  const parts = useMemo(
    (): readonly PartName[] => [
      ...(tune === null ? [] : (['tune'] as const)),
      'bass',
      'keys',
      'drums',
      'click',
      ...(hasTone ? (['drone'] as const) : []),
    ],
    [hasTone, tune],
  );
  useEffect(() => {
    player?.load({ spec, seed, loop }, gainByFeel[spec.feel]);
  }, [player, spec, seed, loop]);
  useEffect(() => {
    for (const part of parts) player?.balance(part, shareOf(mix, part));
  }, [player, mix, parts]);
  useEffect(() => player?.volume((volume / 60) ** 2), [player, volume]);
  const { bar, nth, chorus } = state;
  useEffect(() => setPlace(bar === null ? null : { bar, nth }), [setPlace, bar, nth]);

  const concert = useMemo(() => chorusChart(spec, chorus), [spec, chorus]);
  const chart = useMemo(() => (reader === null ? concert : readerChart(concert, reader)), [concert, reader]);
  const isPlaying = state.status === 'playing';
  useAwake(isPlaying, 60);
  const toggle = () => {
    if (isPlaying) player?.stop();
    else void player?.play();
  };
  usePlayerKeys(toggle, keysOnPage, place);
  const speed = speeds.find((one) => Math.round((given.tempo * Number(one)) / 100) === tempo) ?? 'own';
  const choices = (
    <>
      <SelectField
        label={says.speed}
        value={speed}
        onValue={(value) => {
          if (value !== 'own') setTempo(Math.max(30, Math.round((given.tempo * Number(value)) / 100)));
        }}
        options={[
          ...speeds.map((value) => ({ value, label: says.speeds(Number(value)) })),
          ...(speed === 'own' ? [{ value: 'own' as const, label: says.ownSpeed }] : []),
        ]}
      />
      <Stepper
        name={says.key}
        text={nameOf(chartKey(chart))}
        less={says.lower}
        more={says.higher}
        onStep={(by) => {
          const next = Math.min(11, Math.max(-11, key + by));
          setKey(next);
          props.onTranspose?.(next);
        }}
      />
      <SelectField
        label={says.countIn}
        value={String(countIn) as keyof typeof says.counts}
        onValue={(value) => {
          const next = value === 'fit' ? 'fit' : Number(value);
          setCountIn(next);
          props.onCountIn?.(next);
        }}
        options={(['fit', '0', '1', '2'] as const).map((value) => ({ value, label: says.counts[value] }))}
      />
    </>
  );
  const rest = (
    <>
      <BarChart
        chart={chart}
        bar={heard?.bar ?? null} // in step with the sheets that follow
        range={loop}
        onRange={(range) => goRound(range === null ? null : { ...range, onSheet: null })}
      />
      <p className="soft">
        {reader !== null && readsTransposed(reader) && (
          <>{says.written(reader.name, nameOf(chartKey(concert)))} </>
        )}
        {says.loopHelp} {keysOnPage ? says.keys : says.keysHere}
        {loop !== null && (
          <Button kind="plain" onPress={() => goRound(null)}>
            {says.wholeChart}
          </Button>
        )}
      </p>
      <details>
        <summary>{says.levels}</summary>
        <PartLevels parts={parts} mix={mix} onMix={setMix} volume={volume} onVolume={setVolume} />
      </details>
      {!modesElsewhere && (
        <details>
          <summary>{says.ways}</summary>
          <BandModes material={given} onChange={change} />
          {fault !== null && <p className="field-fault">{fault}</p>}
        </details>
      )}
    </>
  );
  return (
    <section
      className={isBrief ? 'band-player band-player-brief' : 'band-player'}
      ref={place}
      aria-label={says.band.title}
      data-late={state.late}
    >
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
          onStep={(by) => {
            const next = Math.min(320, Math.max(30, tempo + 4 * by));
            setTempo(next);
            props.onTempo?.(next);
          }}
        />
        {!isBrief && choices}
        {tune !== null && (
          <Tick
            ticked={!mix.muted.has('tune')}
            onTick={() => setMix({ ...mix, muted: toggled(mix.muted, 'tune') })}
          >
            {says.withTune}
          </Tick>
        )}
      </div>
      <p className="band-player-state soft" role="status">
        {state.status === 'loading' ? says.loading : null}
        {state.status === 'failed' ? says.failed : null}
        {isPlaying && bar === 0 ? says.counting : null}
        {loop !== null ? ` ${says.round(loop.first, loop.last)}` : null}
      </p>
      {isBrief ? (
        <details>
          <summary>{says.more}</summary>
          <div className="band-player-more">
            <div className="band-player-line">{choices}</div>
            {rest}
          </div>
        </details>
      ) : (
        rest
      )}
    </section>
  );
}

/** `B♭ major` */
const nameOf = (key: Key): string =>
  formatKey(key)
    .replace(/^([A-G])b/, '$1♭')
    .replace('#', '♯');

const tuneMoved = (tune: BackingTune, semitones: number): BackingTune =>
  semitones === 0 ? tune : tune.map((bar) => bar.map((note) => ({ ...note, midi: note.midi + semitones })));

const mixOf = ({ bass, keyboard, drums }: BackingMaterial): Mix => ({
  levels: { bass, keys: keyboard, drums, click: 100, drone: 100, tune: 100 },
  muted: new Set(),
  solo: new Set(),
});

interface Changes {
  readonly given: BackingMaterial;
  /** Why the last change was not taken. */
  readonly fault: string | null;
  readonly change: (fields: Readonly<Record<string, unknown>>) => void;
}

/** The material with what was changed here, as long as it is the same one; a change that cannot be played is not taken. */
function useChanges(asked: BackingMaterial): Changes {
  const [changed, setChanged] = useState({ of: asked, to: asked, fault: null as string | null });
  const now = changed.of === asked ? changed : { of: asked, to: asked, fault: null };
  return {
    given: now.to,
    fault: now.fault,
    change(fields) {
      const read = parseBackingMaterial({ ...now.to, ...fields });
      setChanged(
        read.ok ? { of: asked, to: read.value, fault: null } : { ...now, fault: read.error.message },
      );
    },
  };
}
