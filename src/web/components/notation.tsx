// Engraved pages on the screen and in print. The SVG is read as XML and its nodes are taken in, so that nothing in it runs.

import { useEffect, useRef } from 'react';
import { musicTextFamily, musicTextFont } from '#engraving';
import './notation.css';

let fontReady = false;

/** Makes the font for flats, sharps and note values known to the document, once. */
function loadMusicTextFont(): void {
  if (fontReady) return;
  fontReady = true;
  const bytes = Uint8Array.from(atob(musicTextFont), (c) => c.charCodeAt(0));
  document.fonts.add(new FontFace(musicTextFamily, bytes));
}

export interface NotationProps {
  /** SVG of one page. */
  readonly svg: string;
  readonly className?: string;
}

export function Notation({ svg, className = '' }: NotationProps) {
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    loadMusicTextFont();
    const drawing = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
    frame.current?.replaceChildren(document.adoptNode(drawing));
  }, [svg]);
  return <div ref={frame} className={`notation-frame ${className}`} />;
}
