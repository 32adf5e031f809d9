// Band: type or tap a chart, choose how it is played, and play along. It lives in the address, as sheets do.

import { useEffect, useMemo, useState } from 'react';
import { useLocation, useSearch } from 'wouter';
import { present } from '#core';
import {
  type BackingMaterial,
  findInstrument,
  formatChart,
  type Instrument,
  parseBackingMaterial,
  parseChart,
  readerChart,
  readsTransposed,
  transposeChart,
  transpositionOf,
} from '#music';
import { Button } from '../../components/button.tsx';
import { SelectField, TextField } from '../../components/field.tsx';
import { InstrumentSelect } from '../../components/instrument-select.tsx';
import { Page } from '../../components/page.tsx';
import { BandModes } from '../../sound/band-modes.tsx';
import { BandPlayer } from '../../sound/band-player.tsx';
import { useFollowing } from '../../sound/use-following.ts';
import { words } from '../../words/index.ts';
import { backingAddress, newBacking, readBackingAddress } from './backing-address.ts';
import { ChartEditor } from './chart-editor.tsx';
import { KeepBacking } from './keep-backing.tsx';
import { LeadSheet } from './lead-sheet.tsx';
import '../../components/form.css';
import './backing.css';

const says = words.player.band;
/** Whoever reads what sounds, in the treble clef. */
const concertReader = present(findInstrument('flute'), 'the flute');

export function BackingScreen() {
  const { fields, seed, reader, isWritten, typed, chart, go, readAs } = useBackingAddress();
  const read = useMemo(
    () => parseBackingMaterial({ ...newBacking, ...fields, ...(chart === null ? {} : { chart }) }),
    [fields, chart],
  );
  const material = useLast(chart !== null && read.ok ? read.value : null);
  const following = useFollowing(material?.chart ?? '');
  const [sheet, setSheet] = useState<'none' | 'shown' | 'printing'>('none');
  const change = (more: Readonly<Record<string, unknown>>) => go({ fields: { ...fields, ...more } });
  const isTransposed = reader !== null && readsTransposed(reader);
  return (
    <Page
      title={says.title}
      lead={says.lead}
      actions={
        <>
          <Button onPress={() => go({ seed: (seed + 1) % 2 ** 31 })}>{says.another}</Button>
          <KeepBacking
            material={chart === null ? null : material}
            spec={{ ...newBacking, ...fields, chart }}
            seed={seed}
          />
          <Button isDisabled={chart === null || !read.ok} onPress={() => setSheet('printing')}>
            {says.printLeadSheet}
          </Button>
        </>
      }
    >
      <div className="backing">
        <form className="backing-shape no-print" onSubmit={(event) => event.preventDefault()}>
          <ChartEditor
            text={typed}
            help={isTransposed && isWritten ? says.chartHelpWritten(reader.name) : says.chartHelp}
            onText={(text) => change({ chart: text })}
          />
          <div className="band-modes">
            <TextField
              label={says.titleField}
              value={typeof fields['title'] === 'string' ? fields['title'] : ''}
              onValue={(title) => change({ title: title === '' ? null : title })}
            />
            <InstrumentSelect
              label={says.reader}
              none={says.asTheySound}
              value={reader?.id ?? ''}
              onValue={(id) => readAs(id === '' ? null : id, isWritten)}
            />
            {isTransposed && (
              <SelectField
                label={says.typedAs}
                value={isWritten ? 'written' : 'concert'}
                onValue={(value) => readAs(reader?.id ?? null, value === 'written')}
                options={(['concert', 'written'] as const).map((value) => ({
                  value,
                  label: says.typedWays[value],
                }))}
              />
            )}
          </div>
          {!read.ok && read.error.at !== '/chart' && <p className="field-fault">{read.error.message}</p>}
          {material !== null && (
            <details>
              <summary>{says.ways}</summary>
              <BandModes material={material} onChange={change} />
            </details>
          )}
        </form>
        {material !== null && (
          <div className="no-print">
            <BandPlayer
              spec={material}
              seed={seed}
              keysOnPage
              reader={reader}
              following={following}
              modesElsewhere
              onTranspose={(transpose) => change({ transpose })}
              onTempo={(tempo) => change({ tempo })}
              onCountIn={(countIn) => change({ countIn })}
            />
          </div>
        )}
        {material !== null && sheet === 'none' && (
          <p className="no-print">
            <Button onPress={() => setSheet('shown')}>{says.showLeadSheet}</Button>
          </p>
        )}
        {material !== null && sheet !== 'none' && (
          <LeadSheet
            material={material}
            instrument={reader ?? concertReader}
            following={following}
            printsFirst={sheet === 'printing'}
            onPrinted={() => setSheet('shown')}
          />
        )}
      </div>
    </Page>
  );
}

/** The last value that was one: while a chart is being typed the band keeps what it had. */
function useLast(value: BackingMaterial | null): BackingMaterial | null {
  const [last, setLast] = useState(value);
  useEffect(() => {
    if (value !== null) setLast(value);
  }, [value]);
  return value ?? last;
}

interface Wish {
  readonly fields: Readonly<Record<string, unknown>>;
  readonly seed: number;
  readonly reader: Instrument['id'] | null;
  readonly isWritten: boolean;
}

function useBackingAddress() {
  const search = useSearch();
  const [, navigate] = useLocation();
  const address = useMemo(() => readBackingAddress(search), [search]);
  const { fields, seed, isWritten } = address;
  const reader = address.reader === null ? null : findInstrument(address.reader);
  const given = { ...newBacking, ...fields }['chart'];
  const typed = typeof given === 'string' ? given : '';
  const chart = useMemo(() => concertChart(typed, isWritten ? reader : null), [typed, isWritten, reader]);
  const go = (more: Partial<Wish>) => {
    const next = { ...address, ...more };
    navigate(backingAddress(next.fields, next.seed, next), { replace: true });
  };
  return {
    fields,
    seed,
    reader,
    isWritten,
    typed,
    chart,
    go,
    /** Somebody else reads, or it is typed otherwise: what sounds stays, the text follows. */
    readAs: (id: Wish['reader'], asWritten: boolean) => {
      const next = { reader: id, isWritten: asWritten };
      if (chart === null || (!isWritten && !asWritten)) return go(next);
      const text = writtenChart(chart, asWritten && id !== null ? findInstrument(id) : null);
      go({ ...next, fields: { ...fields, chart: text } });
    },
  };
}

/** A chart at concert pitch, typed as it sounds or as somebody reads it; null where it cannot be read. */
function concertChart(text: string, typedFor: Instrument | null): string | null {
  const read = parseChart(text);
  if (!read.ok) return null;
  return typedFor === null ? text : formatChart(transposeChart(read.value, transpositionOf(typedFor)));
}

/** A readable chart at concert pitch as it is typed for somebody. */
function writtenChart(text: string, typedFor: Instrument | null): string {
  const read = parseChart(text);
  return read.ok && typedFor !== null ? formatChart(readerChart(read.value, typedFor)) : text;
}
