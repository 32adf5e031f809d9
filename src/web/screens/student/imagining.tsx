import { useEffect, useRef, useState } from 'react';
import type { WhatIfView } from '#contract';
import { Button } from '../../components/button.tsx';
import { words } from '../../words/index.ts';
import { LongList } from './long-list.tsx';

const say = words.student.whatIf;

interface Props {
  readonly view: WhatIfView;
  readonly onKeep: () => Promise<void>;
  readonly onLeave: () => void;
  /** What keeping it is called here. */
  readonly keep?: string;
}

/** What would change, most important first, and the choice to keep or leave it. */
export function Imagining({ view, onKeep, onLeave, keep = say.keep }: Props) {
  const [keeping, setKeeping] = useState(false);
  const title = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new answer is what the reader is led to
  useEffect(() => {
    title.current?.focus({ preventScroll: true });
    title.current?.scrollIntoView({ block: 'start' });
  }, [view]);
  return (
    <div className="imagining">
      <div className="imagined-head">
        <h3 ref={title} tabIndex={-1}>
          {say.changes}
        </h3>
        <Button
          kind="primary"
          pending={keeping}
          onPress={async () => {
            setKeeping(true);
            await onKeep();
            setKeeping(false);
          }}
        >
          {keep}
        </Button>
        <Button onPress={onLeave}>{say.leave}</Button>
      </div>
      {view.changes.length === 0 ? (
        <p>{say.noChanges}</p>
      ) : (
        <LongList items={view.changes} most={5} className="imagined-changes">
          {(sentence) => <li key={sentence}>{sentence}</li>}
        </LongList>
      )}
    </div>
  );
}
