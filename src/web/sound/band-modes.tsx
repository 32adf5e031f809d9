// How the band plays a chart: feel, times through, who plays when, keys and tempo from chorus to chorus, click, tones.

import { type BackingMaterial, feelIds, toneNames } from '#music';
import { SelectField } from '../components/field.tsx';
import { Tick } from '../components/tick.tsx';
import { words } from '../words/index.ts';
import { readKeyList } from './key-list.ts';
import { Typed } from './typed.tsx';

const says = words.player.band;
const keysOf = <Table extends object>(table: Table) => Object.keys(table) as (keyof Table & string)[];

export interface BandModesProps {
  readonly material: BackingMaterial;
  /** Hears the fields that change; `material` follows where they make sense together. */
  readonly onChange: (fields: Readonly<Record<string, unknown>>) => void;
}

type Turns = 'all' | 'gate' | 'trade';
const first: Readonly<Record<Turns, Readonly<Record<string, number>>>> = {
  all: { rest: 0, trade: 0 },
  gate: { play: 2, rest: 2, trade: 0 },
  trade: { rest: 0, trade: 4 },
};

export function BandModes({ material, onChange }: BandModesProps) {
  const { feel, choruses, click, grows, drone, tuning } = material;
  const tones = [
    { value: 'none' as const, label: says.noTone },
    ...toneNames.map((value) => ({ value, label: value.replace('b', '♭').replace('#', '♯') })),
  ];
  const held = [{ value: 'tonic' as const, label: says.tonic }, ...tones];
  return (
    <div className="band-modes">
      <SelectField
        label={says.feel}
        value={feel}
        onValue={(value) => onChange({ feel: value })}
        options={feelIds.map((value) => ({ value, label: says.feels[value] }))}
      />
      <Count
        label={says.choruses}
        value={choruses}
        max={64}
        onValue={(value) => onChange({ choruses: value })}
      />
      <Turns material={material} onChange={onChange} />
      <Keys material={material} onChange={onChange} />
      <Steps material={material} onChange={onChange} />
      <SelectField
        label={says.click}
        value={click}
        onValue={(value) => onChange({ click: value })}
        options={keysOf(says.clicks).map((value) => ({ value, label: says.clicks[value] }))}
      />
      <SelectField
        label={says.drone}
        value={drone}
        onValue={(value) => onChange({ drone: value })}
        options={held}
      />
      <SelectField
        label={says.tuning}
        value={tuning}
        onValue={(value) => onChange({ tuning: value })}
        options={tones}
      />
      <Tick ticked={grows} onTick={(value) => onChange({ grows: value })}>
        {says.grows}
      </Tick>
    </div>
  );
}

/** The band plays all through, or rests and leaves bars free in turn. */
function Turns({ material: { play, rest, resting, trade }, onChange }: BandModesProps) {
  const turns: Turns = trade > 0 ? 'trade' : rest > 0 ? 'gate' : 'all';
  return (
    <>
      <SelectField
        label={says.modes}
        value={turns}
        onValue={(value) => onChange(first[value])}
        options={keysOf(says.mode).map((value) => ({ value, label: says.mode[value] }))}
      />
      {turns === 'gate' && (
        <>
          <Count label={says.play} value={play} max={32} onValue={(value) => onChange({ play: value })} />
          <Count label={says.rest} value={rest} max={32} onValue={(value) => onChange({ rest: value })} />
          <SelectField
            label={says.resting}
            value={resting}
            onValue={(value) => onChange({ resting: value })}
            options={keysOf(says.restings).map((value) => ({ value, label: says.restings[value] }))}
          />
        </>
      )}
      {turns === 'trade' && (
        <Count label={says.trade} value={trade} max={32} onValue={(value) => onChange({ trade: value })} />
      )}
    </>
  );
}

function Keys({ material: { keys }, onChange }: BandModesProps) {
  return (
    <>
      <SelectField
        label={says.move}
        value={typeof keys === 'string' ? keys : 'list'}
        onValue={(value) => onChange({ keys: value === 'list' ? [0, 5, -2] : value })}
        options={keysOf(says.moves).map((value) => ({ value, label: says.moves[value] }))}
      />
      {typeof keys !== 'string' && (
        <Typed
          label={says.keyList}
          help={says.keyListHelp}
          value={keys.join(' ')}
          onValue={(text) => {
            const list = readKeyList(text);
            if (list !== null) onChange({ keys: list });
            return list !== null;
          }}
          fault={says.keyListFault}
        />
      )}
    </>
  );
}

function Steps({ material: { tempo, tempoStep, tempoLimit }, onChange }: BandModesProps) {
  const usual = keysOf(says.steps).find((one) => Number(one) === tempoStep);
  const options = keysOf(says.steps).map((value): { value: string; label: string } => ({
    value,
    label: says.steps[value],
  }));
  if (usual === undefined) options.push({ value: String(tempoStep), label: says.ownStep(tempoStep) });
  return (
    <>
      <SelectField
        label={says.step}
        value={String(tempoStep)}
        onValue={(value) => onChange({ tempoStep: Number(value), tempoLimit: 'none' })}
        options={options}
      />
      {tempoStep !== 0 && (
        <Count
          label={tempoStep > 0 ? says.upTo : says.downTo}
          value={tempoLimit === 'none' ? (tempoStep > 0 ? 320 : 30) : tempoLimit}
          min={tempoStep > 0 ? tempo : 30}
          max={tempoStep > 0 ? 320 : tempo}
          onValue={(value) => onChange({ tempoLimit: value })}
        />
      )}
    </>
  );
}

interface CountProps {
  readonly label: string;
  readonly value: number;
  readonly min?: number;
  readonly max: number;
  readonly onValue: (value: number) => void;
}

/** A whole number; while it is being typed it may be none. */
function Count({ label, value, min = 1, max, onValue }: CountProps) {
  return (
    <Typed
      label={label}
      value={String(value)}
      number={{ min, max }}
      fault={says.countFault(min, max)}
      onValue={(text) => {
        const count = Number(text);
        const isFit = text.trim() !== '' && Number.isInteger(count) && count >= min && count <= max;
        if (isFit) onValue(count);
        return isFit;
      }}
    />
  );
}
