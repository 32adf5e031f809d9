// A chart, typed or tapped, read at once: what cannot be read is named, with the nearest symbol to take instead.

import { useRef, useState } from 'react';
import { formatChart, parseChart } from '#music';
import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { words } from '../../words/index.ts';
import { nextSection, type Tap, tapChart } from './tap-chart.ts';

const says = words.player.band;
const roots = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
const qualities = ['', 'm', '7', 'maj7', 'm7', '6', 'm6', 'm7b5', 'dim7', '7sus4', '9', '7alt'];
const signs = ['|', '%', 'N.C.', '|:', ':|', '1.', '2.'];
const printed = (name: string) => name.replace(/(?<=[A-G])b|b(?=\d)/g, '♭').replace('#', '♯');

export interface ChartEditorProps {
  readonly text: string;
  readonly onText: (text: string) => void;
  /** How it is read: at concert pitch, or as an instrument reads. */
  readonly help: string;
}

export function ChartEditor({ text, onText, help }: ChartEditorProps) {
  const place = useRef<HTMLDivElement>(null);
  /** Where the cursor was last seen; at the end until it is put elsewhere. */
  const [at, setAt] = useState<number | null>(null);
  const read = parseChart(text);
  const tap = (one: Tap) => {
    const next = tapChart({ text, at: Math.min(at ?? text.length, text.length) }, one);
    onText(next.text);
    setAt(next.at);
  };
  const nearest = !read.ok && read.error.symbol !== '' ? read.error.nearest : null;
  const tidy = read.ok ? formatChart(read.value) : text;
  return (
    <div
      className="chart-editor"
      ref={place}
      onSelect={(event) => {
        if (event.target instanceof HTMLTextAreaElement) setAt(event.target.selectionStart);
      }}
    >
      <TextField
        label={says.chart}
        help={help}
        rows={3}
        value={text}
        fault={read.ok ? null : read.error.message}
        onValue={(value) => {
          onText(value);
          setAt(place.current?.querySelector('textarea')?.selectionStart ?? null);
        }}
      />
      {(nearest !== null || tidy !== text.trim()) && (
        <p className="chart-mend">
          {!read.ok && nearest !== null && (
            <Button onPress={() => onText(withSymbol(text, read.error.symbol, nearest))}>
              {says.take(nearest)}
            </Button>
          )}
          {read.ok && (
            <Button kind="plain" onPress={() => onText(tidy)}>
              {says.tidy}
            </Button>
          )}
        </p>
      )}
      <details className="chart-pad">
        <summary>{says.tap}</summary>
        <PadRow name={says.roots}>
          {roots.map((name) => (
            <Key key={name} label={printed(name)} onPress={() => tap({ kind: 'root', name })} />
          ))}
        </PadRow>
        <PadRow name={says.qualities}>
          {qualities.map((suffix) => (
            <Key
              key={suffix}
              label={suffix === '' ? says.majorTriad : printed(suffix)}
              onPress={() => tap({ kind: 'quality', suffix })}
            />
          ))}
          <Key label={says.bass} onPress={() => tap({ kind: 'bass' })} />
        </PadRow>
        <PadRow name={says.signs}>
          {signs.map((sign) => (
            <Key
              key={sign}
              label={sign}
              name={says.signNames[sign]}
              onPress={() => tap({ kind: 'sign', sign })}
            />
          ))}
          <Key
            label={`[${nextSection(text)}]`}
            name={says.section(nextSection(text))}
            onPress={() => tap({ kind: 'sign', sign: `[${nextSection(text)}]` })}
          />
          <Key label="⌫" name={says.back} onPress={() => tap({ kind: 'back' })} />
        </PadRow>
      </details>
    </div>
  );
}

/** The first place of a symbol that cannot be read, as what can. */
function withSymbol(text: string, symbol: string, nearest: string): string {
  const from = text.indexOf(symbol);
  return from < 0 ? text : text.slice(0, from) + nearest + text.slice(from + symbol.length);
}

function PadRow({ name, children }: { readonly name: string; readonly children: React.ReactNode }) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a frame and a legend of its own
    <div className="chart-pad-row" role="group" aria-label={name}>
      {children}
    </div>
  );
}

interface KeyProps {
  readonly label: string;
  /** Read out, where the label is a sign. */
  readonly name?: string | undefined;
  readonly onPress: () => void;
}

function Key({ label, name, onPress }: KeyProps) {
  return (
    <Button
      className="chart-pad-key"
      onPress={onPress}
      {...(name === undefined ? {} : { 'aria-label': name })}
    >
      {label}
    </Button>
  );
}
