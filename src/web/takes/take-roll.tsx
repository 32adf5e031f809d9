// A take to look at: its waveform, bars and chords above, its notes beneath, phrases as slurs. A note touched is heard from
// there; the same stands in a table for those who cannot see it.

import { useEffect, useMemo, useRef } from 'react';
import type { HeardTake, WrittenContext } from '#contract';
import type { Evidence } from '#listening';
import { words } from '../words/index.ts';
import { drawRoll } from './draw-roll.ts';
import { midiName } from './format-figure.ts';
import './take-roll.css';

const say = words.takes.result;

export interface TakeRollProps {
  readonly heard: HeardTake;
  readonly evidence: Evidence;
  readonly context: WrittenContext;
  /** Where the sound is, in seconds; null while it is still. */
  readonly at: number | null;
  /** A passage to mark. */
  readonly marked: { readonly from: number; readonly to: number } | null;
  /** Hears from a moment on; null where no sound is kept. */
  readonly onHear: ((from: number, to: number) => void) | null;
}

export function TakeRoll({ heard, evidence, context, at, marked, onHear }: TakeRollProps) {
  const roll = useMemo(() => drawRoll(heard, evidence, context), [heard, evidence, context]);
  const frame = useRef<HTMLElement>(null);
  // What is marked, or sounds, is brought into sight.
  const wanted = at ?? marked?.from ?? null;
  useEffect(() => {
    const shown = frame.current;
    if (shown === null || wanted === null) return;
    const x = roll.secondsToX(wanted);
    if (x < shown.scrollLeft || x > shown.scrollLeft + shown.clientWidth - 40) shown.scrollLeft = x - 40;
  }, [wanted, roll]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a picture that scrolls must be reachable by keyboard
    <section ref={frame} className="roll-frame" tabIndex={0} aria-label={say.roll}>
      <svg
        className="roll"
        viewBox={`0 0 ${roll.width} ${roll.height}`}
        style={{ width: roll.width, height: roll.height }}
        role="img"
        aria-label={say.roll}
      >
        {marked && (
          <rect
            className="roll-marked"
            x={roll.secondsToX(marked.from)}
            width={Math.max(4, roll.secondsToX(marked.to) - roll.secondsToX(marked.from))}
            y="0"
            height={roll.height}
          />
        )}
        {roll.octaves.map(({ midi, y }) => (
          <g key={midi} className="roll-octave">
            <line x1="0" x2={roll.width} y1={y + roll.rowHeight} y2={y + roll.rowHeight} />
            <text x="2" y={y + roll.rowHeight - 2}>
              {midiName(midi)}
            </text>
          </g>
        ))}
        {roll.bars.map((bar) => (
          <g key={bar.number} className="roll-bar">
            <line x1={bar.x} x2={bar.x} y1="20" y2={roll.height} />
            <text className="roll-number" x={bar.x + 3} y="14">
              {bar.number}
            </text>
            <text className="roll-chord" x={bar.x + 3} y="34">
              {bar.chord}
            </text>
          </g>
        ))}
        <path className="roll-wave" d={roll.waveform} />
        {roll.phrases.map((slur) => (
          <path key={slur} className="roll-slur" d={slur} />
        ))}
        <g
          className={onHear ? 'roll-notes roll-hearable' : 'roll-notes'}
          // On letting go: what was touched by mistake can be slid away from (WCAG 2.2, success criterion 2.5.2).
          onPointerUp={(event) => {
            const index = (event.target as SVGElement).getAttribute('data-note');
            if (index !== null) hearNote(heard, Number(index), onHear);
          }}
        >
          {roll.notes.map((note) => (
            <rect
              key={note.index}
              data-note={note.index}
              className={isSounding(heard, note.index, at) ? 'roll-note is-sounding' : 'roll-note'}
              x={note.x}
              y={note.y}
              width={note.width}
              height={roll.rowHeight}
              rx="1"
            />
          ))}
        </g>
        {at !== null && (
          <line
            className="roll-now"
            x1={roll.secondsToX(at)}
            x2={roll.secondsToX(at)}
            y1="0"
            y2={roll.height}
          />
        )}
      </svg>
    </section>
  );
}

function hearNote(heard: HeardTake, index: number, onHear: TakeRollProps['onHear']): void {
  const note = heard.notes[index];
  if (note && onHear) onHear(Math.max(0, note.onset - 0.05), note.offset + 0.1);
}

function isSounding(heard: HeardTake, index: number, at: number | null): boolean {
  const note = heard.notes[index];
  return at !== null && note !== undefined && at >= note.onset && at < note.offset;
}

export interface NoteTableProps {
  readonly heard: HeardTake;
  /** Hears from a moment to another; null where no sound is kept. */
  readonly onHear: TakeRollProps['onHear'];
}

/** The notes of the picture, for those who cannot see it. */
export function NoteTable({ heard, onHear }: NoteTableProps) {
  if (heard.notes.length === 0) return null;
  return (
    <details className="roll-table">
      <summary>{say.rollTable}</summary>
      <div className="roll-table-frame">
        <table>
          <thead>
            <tr>
              <th scope="col">{say.pitch}</th>
              <th scope="col">{say.cents}</th>
              <th scope="col">{say.onset}</th>
              <th scope="col">{say.length}</th>
              <th scope="col">{say.loudness}</th>
            </tr>
          </thead>
          <tbody>
            {heard.notes.map((note, i) => (
              <tr key={note.onset}>
                <td>
                  {onHear === null ? (
                    midiName(note.midi)
                  ) : (
                    <button
                      type="button"
                      className="roll-hear"
                      aria-label={say.note(midiName(note.midi), `${note.onset.toFixed(2)} s`)}
                      onClick={() => hearNote(heard, i, onHear)}
                    >
                      {midiName(note.midi)}
                    </button>
                  )}
                </td>
                <td>{Math.round(note.cents)}</td>
                <td>{note.onset.toFixed(2)}</td>
                <td>{(note.offset - note.onset).toFixed(2)}</td>
                <td>{Math.round(note.db)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
