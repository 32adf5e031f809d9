// Reads a chart the way musicians type it: `[A] |: Dm7 G7 | C % | 1. F :| 2. C |`.

import { err, ok, present, type Result } from '#core';
import { type Chord, parseChord } from '../chord/chord.ts';
import { fraction } from '../fraction/fraction.ts';
import type { Chart, ChartBar, ChartChord } from './chart.ts';

export interface ChartUnreadable {
  readonly kind: 'ChartUnreadable';
  /** Bar number from 1. */
  readonly bar: number;
  /** What stands there; empty when something is missing. */
  readonly symbol: string;
  /** The nearest that could be read; null when there is none to offer. */
  readonly nearest: string | null;
  readonly message: string;
}

interface OpenBar {
  section: string | null;
  repeatStart: boolean;
  ending: number | null;
  symbols: string[];
}

const tokenPattern = /:\|:|:\||\|:|\|+|\[[^\]|]*\]|[^\s|:[\]]+|\S/g;
const openBar = (): OpenBar => ({ section: null, repeatStart: false, ending: null, symbols: [] });

/**
 * Reads a typed chart. Chords in a bar share it evenly; `/` holds the chord for one more share; `%` is the bar before
 * again; `N.C.` no chord; `[A]` a section; `|:` `:|` repeats; `1.` `2.` endings.
 */
export function parseChart(text: string): Result<Chart, ChartUnreadable> {
  const bars: ChartBar[] = [];
  let open = openBar();
  const close = (repeatEnd: boolean): ChartUnreadable | null => {
    if (open.symbols.length === 0) return bars.length === 0 || !repeatEnd ? null : closeLast();
    const number = bars.length + 1;
    const isSame = open.symbols.length === 1 && open.symbols[0] === '%';
    const before = bars.at(-1)?.chords;
    if (isSame && before === undefined) return fault(number, '%', null, 'has no bar before it to repeat');
    const chords = isSame && before !== undefined ? ok(before) : readChords(open.symbols, number);
    if (!chords.ok) return chords.error;
    const { section, repeatStart, ending } = open;
    bars.push({ number, section, chords: chords.value, isSame, repeatStart, repeatEnd, ending });
    open = openBar();
    return null;
  };
  const closeLast = (): null => {
    const last = present(bars.pop(), 'the bar before');
    bars.push({ ...last, repeatEnd: true });
    return null;
  };
  let barlines = 0;
  for (const [token] of text.matchAll(tokenPattern)) {
    if (/^(:?\|+:?|:\|:)$/.test(token)) {
      barlines++;
      const pending = open.section !== null || open.ending !== null || open.repeatStart;
      if (
        open.symbols.length === 0 &&
        bars.length > 0 &&
        !token.startsWith(':') &&
        !pending &&
        barlines > 1
      ) {
        if (token === '|')
          return err(fault(bars.length + 1, '', '%', 'is empty: write % for the same again'));
      }
      const problem = close(token.startsWith(':'));
      if (problem !== null) return err(problem);
      if (token.endsWith(':')) open.repeatStart = true;
    } else {
      barlines = 0;
      if (token.startsWith('[') && token.length > 2) open.section = token.slice(1, -1).trim();
      else if (/^\d\.$/.test(token)) open.ending = Number(token[0]);
      else open.symbols.push(token);
    }
  }
  const problem = close(false);
  if (problem !== null) return err(problem);
  if (bars.length === 0)
    return err(fault(1, '', null, 'is missing: write chords between bar lines, | Dm7 G7 | C |'));
  return ok({ bars });
}

function fault(bar: number, symbol: string, nearest: string | null, what: string): ChartUnreadable {
  const subject = symbol === '' ? `Bar ${bar}` : `Bar ${bar}: “${symbol}”`;
  return { kind: 'ChartUnreadable', bar, symbol, nearest, message: `${subject} ${what}.` };
}

/** The chords of one bar, each with its share. */
function readChords(symbols: readonly string[], bar: number): Result<readonly ChartChord[], ChartUnreadable> {
  const chords: { chord: Chord | null; at: number; slots: number }[] = [];
  for (const [slot, symbol] of symbols.entries()) {
    const last = chords.at(-1);
    if (symbol === '/' || symbol === '%') {
      if (last === undefined) return err(fault(bar, symbol, null, 'has no chord before it to hold'));
      last.slots++;
      continue;
    }
    if (/^n\.?c\.?$/i.test(symbol)) {
      chords.push({ chord: null, at: slot, slots: 1 });
      continue;
    }
    const read = parseChord(symbol);
    if (!read.ok) {
      const { nearest } = read.error;
      return err(fault(bar, symbol, nearest, `is no chord symbol we can read. The nearest is ${nearest}`));
    }
    chords.push({ chord: read.value, at: slot, slots: 1 });
  }
  const all = symbols.length;
  return ok(
    chords.map(({ chord, at, slots }) => ({ chord, at: fraction(at, all), share: fraction(slots, all) })),
  );
}
