import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { theOutbox } from '../../app/the-outbox.ts';
import { useOutbox } from '../../hooks/use-outbox.ts';
import { createKeptField, type KeptField, type ToldText } from './kept-field.ts';

/** A text field whose every keystroke is sent through the outbox. A change of `told.field` begins anew. */
export function useKeptText(told: ToldText, post: (base: string, text: string) => void): KeptField {
  const { pending, forgotten } = useOutbox();
  const [, redraw] = useState(0);
  const postNow = useRef(post);
  postNow.current = post;
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each field; what is told later is looked at below
  const kept = useMemo(
    () =>
      createKeptField(told, {
        outbox: theOutbox,
        post: (base, text) => postNow.current(base, text),
        redraw: () => redraw((n) => n + 1),
      }),
    [told.field],
  );
  useEffect(() => kept.listen(), [kept]);
  const { field, stored, revision } = told;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what the outbox knows changes with what is pending there, and is forgotten
  useLayoutEffect(
    () => kept.look({ field, stored, revision }),
    [kept, field, stored, revision, pending, forgotten],
  );
  return kept;
}
