// Band: type a chart, choose how it is played, and play along. It lives in the address, as sheets do.

import { useMemo } from 'react';
import { useLocation, useSearch } from 'wouter';
import { type BackingMaterial, feelIds, parseBackingMaterial } from '#music';
import { Button } from '../../components/button.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { Page } from '../../components/page.tsx';
import { Tick } from '../../components/tick.tsx';
import { BandPlayer } from '../../sound/band-player.tsx';
import { words } from '../../words/index.ts';
import { backingAddress, newBacking, readBackingAddress } from './backing-address.ts';
import '../../components/form.css';
import './backing.css';

const says = words.player.band;
const keysOf = <Table extends object>(table: Table) => Object.keys(table) as (keyof Table & string)[];

export function BackingScreen() {
  const search = useSearch();
  const [, navigate] = useLocation();
  const { fields, seed } = useMemo(() => readBackingAddress(search), [search]);
  const read = useMemo(() => parseBackingMaterial({ ...newBacking, ...fields }), [fields]);
  const change = (more: Readonly<Record<string, unknown>>, nextSeed = seed) =>
    navigate(backingAddress({ ...fields, ...more }, nextSeed), { replace: true });
  const given = { ...newBacking, ...fields };
  const chart = typeof given['chart'] === 'string' ? given['chart'] : '';
  const fault = read.ok ? null : read.error;
  // While a chart is being typed the band keeps what it had.
  const known = useMemo(() => (read.ok ? read.value : null), [read]);
  return (
    <Page
      title={says.title}
      lead={says.lead}
      actions={<Button onPress={() => change({}, (seed + 1) % 2 ** 31)}>{says.another}</Button>}
    >
      <div className="backing">
        <form className="backing-shape" onSubmit={(event) => event.preventDefault()}>
          <TextField
            label={says.chart}
            help={says.chartHelp}
            rows={4}
            value={chart}
            fault={fault?.at === '/chart' ? fault.message : null}
            onValue={(value) => change({ chart: value })}
          />
          {fault !== null && fault.at !== '/chart' && <p className="field-fault">{fault.message}</p>}
          {known !== null && <Shape material={known} onChange={change} />}
        </form>
        {known !== null && <BandPlayer spec={known} seed={seed} keysOnPage />}
      </div>
    </Page>
  );
}

interface ShapeProps {
  readonly material: BackingMaterial;
  readonly onChange: (fields: Readonly<Record<string, unknown>>) => void;
}

const modes = {
  all: { rest: 0, trade: 0 },
  gate2: { play: 2, rest: 2, trade: 0 },
  gate4: { play: 4, rest: 4, trade: 0 },
  trade2: { rest: 0, trade: 2 },
  trade4: { rest: 0, trade: 4 },
} as const;

function Shape({ material, onChange }: ShapeProps) {
  const { feel, choruses, click, keys, tempoStep, rest, trade, grows } = material;
  const mode = keysOf(modes).find((one) => modes[one].trade === trade && modes[one].rest === rest) ?? 'all';
  return (
    <div className="backing-fields">
      <SelectField
        label={says.feel}
        value={feel}
        onValue={(value) => onChange({ feel: value })}
        options={feelIds.map((value) => ({ value, label: says.feels[value] }))}
      />
      <TextField
        label={says.choruses}
        type="number"
        min={1}
        max={64}
        value={String(choruses)}
        onValue={(value) => onChange({ choruses: Number(value) })}
      />
      <SelectField
        label={says.modes}
        value={mode}
        onValue={(value) => onChange(modes[value])}
        options={keysOf(modes).map((value) => ({ value, label: says.mode[value] }))}
      />
      <SelectField
        label={says.move}
        value={typeof keys === 'string' ? keys : 'same'}
        onValue={(value) => onChange({ keys: value })}
        options={keysOf(says.moves).map((value) => ({ value, label: says.moves[value] }))}
      />
      <SelectField
        label={says.step}
        value={keysOf(says.steps).find((one) => Number(one) === tempoStep) ?? '0'}
        onValue={(value) => onChange({ tempoStep: Number(value) })}
        options={keysOf(says.steps).map((value) => ({ value, label: says.steps[value] }))}
      />
      <SelectField
        label={says.click}
        value={click}
        onValue={(value) => onChange({ click: value })}
        options={keysOf(says.clicks).map((value) => ({ value, label: says.clicks[value] }))}
      />
      <Tick ticked={grows} onTick={(value) => onChange({ grows: value })}>
        {says.grows}
      </Tick>
    </div>
  );
}
