// A take as it was heard: played again, drawn, and told in figures. Used for one just recorded and for one that was kept.

import { type ReactNode, useEffect, useMemo, useState } from 'react';
import type { ListenableCheckView, TakeView } from '#contract';
import { describeProblem, type Passage } from '#listening';
import { Button } from '../components/button.tsx';
import { words } from '../words/index.ts';
import { CheckList } from './check-list.tsx';
import type { Samples } from './decode-sound.ts';
import { EvidenceList } from './evidence-list.tsx';
import { formatLength } from './format-figure.ts';
import { createSamplePlayer } from './play-samples.ts';
import { TakeNotation } from './take-notation.tsx';
import { NoteTable, TakeRoll } from './take-roll.tsx';
import './take-result.css';

const say = words.takes.result;

export interface TakeResultProps {
  readonly take: Pick<TakeView, 'heard' | 'evidence' | 'context'>;
  /** Of what was played, as far as a take can show something of them. */
  readonly checks: readonly ListenableCheckView[];
  /** Null where only the figures are kept. */
  readonly sound: Samples | null;
  /** Whether it was played to a click that it did not lie on. */
  readonly offClick?: boolean;
  /** What is done with the take; it comes before the evidence, which is long. */
  readonly children?: ReactNode;
}

export function TakeResult({ take, checks, sound, offClick = false, children }: TakeResultProps) {
  const { heard, evidence, context } = take;
  const [at, setAt] = useState<number | null>(null);
  const [marked, setMarked] = useState<{ readonly from: number; readonly to: number } | null>(null);
  const player = useMemo(() => (sound === null ? null : createSamplePlayer(sound)), [sound]);
  useEffect(() => () => player?.close(), [player]);
  const hear = (from: number, to: number) => player?.play(from, to, setAt);
  const showPassage = (passage: Passage) => {
    setMarked(passage);
    hear(Math.max(0, passage.from - 0.1), passage.to + 0.1);
  };
  return (
    <div className="take-result">
      <div className="take-picture">
        <div className="take-result-head">
          {player && (
            <Button large onPress={() => (at === null ? hear(0, heard.seconds) : player.stop())}>
              {at === null ? say.hear : say.stop}
            </Button>
          )}
          <p className="soft">
            {say.heard(heard.notes.length, formatLength(heard.seconds))}
            {heard.alignment && ` · ${say.tempo(Math.round(heard.alignment.grid.tempo))}`}
          </p>
        </div>
        {heard.problems.map((problem) => (
          <p key={problem.kind} className="take-problem">
            {describeProblem(problem)}
          </p>
        ))}
        {heard.notes.length === 0 && heard.problems.length === 0 && <p>{say.noNotes}</p>}
        {sound === null && <p className="faint">{say.keptFigures}</p>}
        {offClick && <p className="soft">{say.offClick}</p>}
        {heard.notes.length > 0 && (
          <TakeRoll
            heard={heard}
            evidence={evidence}
            context={context}
            at={at}
            marked={marked}
            onHear={player ? hear : null}
          />
        )}
        <CheckList checks={checks} heard={heard} evidence={evidence} onPassage={showPassage} />
        {children}
        <div>
          <TakeNotation heard={heard} evidence={evidence} context={context} />
          <NoteTable heard={heard} onHear={player ? hear : null} />
        </div>
      </div>
      {heard.notes.length > 0 && (
        <div className="take-evidence">
          <h3>{say.evidence}</h3>
          <EvidenceList take={take} onPassage={showPassage} />
        </div>
      )}
    </div>
  );
}
