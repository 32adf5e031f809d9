// The take as it would be written: drawn when it is asked for, since the engraver is large.

import { useState } from 'react';
import type { HeardTake, WrittenContext } from '#contract';
import { type Evidence, parseTakeContext, writeTake } from '#listening';
import { Notation } from '../components/notation.tsx';
import { wishScore } from '../engraver/engraver.ts';
import { useStudio } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';

/** As wide as a sheet over the page. */
const column = { widthMm: 190, mostHeightMm: null } as const;

export interface TakeNotationProps {
  readonly heard: HeardTake;
  readonly evidence: Evidence;
  readonly context: WrittenContext;
}

export function TakeNotation({ heard, evidence, context }: TakeNotationProps) {
  const naming = useStudio().data?.noteNames ?? 'british';
  const [pages, setPages] = useState<readonly string[]>([]);
  const [fault, setFault] = useState<string | null>(null);
  if (heard.alignment === null || heard.notes.length === 0) return null;
  const draw = async () => {
    const parsed = parseTakeContext(context);
    if (heard.alignment === null || !parsed.ok || pages.length > 0) return;
    const phrases = evidence.phrases.heard ? evidence.phrases.details.phrases : [];
    const { notes, alignment } = heard;
    const written = writeTake({ notes, alignment, phrases, context: parsed.value });
    if (written === null) return;
    const drawn = await wishScore({
      score: written.score,
      drawing: { form: column, scale: 80, name: 'take', heading: 'tempo', naming },
    });
    if (drawn.ok) setPages(drawn.value.map((page) => page.svg));
    else setFault(drawn.error.message);
  };
  return (
    <details className="take-notation" onToggle={(event) => event.currentTarget.open && void draw()}>
      <summary>{words.takes.result.notation}</summary>
      {fault && <p className="fault">{fault}</p>}
      {pages.map((svg) => (
        <Notation key={svg} svg={svg} />
      ))}
    </details>
  );
}
