// Someone saved in between: said where the eyes are, with the ways on.

import { type ReactNode, useEffect, useRef } from 'react';

export interface ClashProps {
  readonly sentence: string;
  readonly children: ReactNode;
}

export function Clash({ sentence, children }: ClashProps) {
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    place.current?.focus({ preventScroll: true });
    place.current?.scrollIntoView({ block: 'center' });
  }, []);
  return (
    <section className="editor-clash" role="alert" tabIndex={-1} ref={place}>
      <p>{sentence}</p>
      {children}
    </section>
  );
}
