// A small picture in two inks: what every diagram is made of before it is written as SVG.

/** `ink` is the colour of the text around the picture, `paper` that of the page. */
export type Ink = 'ink' | 'paper' | 'none';

export type Mark =
  | {
      readonly shape: 'line';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly width: number;
    }
  | {
      readonly shape: 'circle';
      readonly x: number;
      readonly y: number;
      readonly r: number;
      readonly fill: Ink;
      /** Width of the outline; 0 for none. */
      readonly outline: number;
    }
  /** A circle whose left half is filled: a hole half covered. */
  | {
      readonly shape: 'half-circle';
      readonly x: number;
      readonly y: number;
      readonly r: number;
      readonly outline: number;
    }
  /** A rectangle about its centre. */
  | {
      readonly shape: 'box';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly corner: number;
      readonly fill: Ink;
      readonly outline: number;
    }
  /** Text about its centre. A sharp or flat after a letter (`F#`, `Bb`) is drawn, so that no font needs to have it. */
  | {
      readonly shape: 'text';
      readonly x: number;
      readonly y: number;
      readonly size: number;
      readonly text: string;
      readonly ink: 'ink' | 'paper';
      readonly bold: boolean;
    };

export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** What it shows, for those who do not see it: `Trumpet in B flat, written E4`. */
  readonly title: string;
  /** The same content in words: `Valves 1 and 2`. */
  readonly description: string;
  readonly marks: readonly Mark[];
}

/** A straight line. */
export function line(x1: number, y1: number, x2: number, y2: number, width: number): Mark {
  return { shape: 'line', x1, y1, x2, y2, width };
}

/** A filled disc. */
export function disc(x: number, y: number, r: number, fill: 'ink' | 'paper' = 'ink'): Mark {
  return { shape: 'circle', x, y, r, fill, outline: 0 };
}

/** An empty ring. */
export function ring(x: number, y: number, r: number, outline: number): Mark {
  return { shape: 'circle', x, y, r, fill: 'none', outline };
}

/** Text about a point. */
export function text(
  x: number,
  y: number,
  size: number,
  content: string,
  { ink = 'ink', bold = false }: { readonly ink?: 'ink' | 'paper'; readonly bold?: boolean } = {},
): Mark {
  return { shape: 'text', x, y, size, text: content, ink, bold };
}
