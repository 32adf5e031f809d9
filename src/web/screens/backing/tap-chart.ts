// Writing a chart by tapping: what each tap does to the text at the cursor.

export type Tap =
  | { readonly kind: 'root'; readonly name: string }
  /** What follows the root: `m7`; empty for a major triad. */
  | { readonly kind: 'quality'; readonly suffix: string }
  /** The next root becomes the bass of the chord before the cursor. */
  | { readonly kind: 'bass' }
  /** A sign that stands by itself: a bar line, a repeat, `%`, a section. */
  | { readonly kind: 'sign'; readonly sign: string }
  | { readonly kind: 'back' };

export interface ChartText {
  readonly text: string;
  /** Where the cursor stands, in characters. */
  readonly at: number;
}

const chordBefore = /(?<![\w.])([A-G][b#]?)([^\s|[\]/]*)((?:\/[A-G][b#]?)?\/?)$/;
const signBefore = /(\|:|:\|:|:\||\|+|\[[^\]]*\]|[^\s|:[\]]+)$/;

/** The text after a tap, and where the cursor is then. */
export function tapChart({ text, at }: ChartText, tap: Tap): ChartText {
  const before = text.slice(0, at).trimEnd();
  const after = text.slice(at);
  const joined = (start: string, wantsSpace: boolean): ChartText => {
    const spaced = wantsSpace && !/^\s/.test(after) ? `${start} ` : start;
    return { text: spaced + after, at: spaced.length };
  };
  switch (tap.kind) {
    case 'root': {
      if (/[^\s|/]\/$/.test(before)) return joined(before + tap.name, after !== '');
      return joined(`${before === '' ? '|' : before} ${tap.name}`, after !== '');
    }
    case 'quality': {
      const found = chordBefore.exec(before);
      if (found === null) return { text, at };
      const [whole, root = '', , bass = ''] = found;
      return joined(before.slice(0, -whole.length) + root + tap.suffix + bass, after !== '');
    }
    case 'bass':
      return chordBefore.test(before) && !before.endsWith('/') ? joined(`${before}/`, false) : { text, at };
    case 'sign':
      return joined(before === '' ? tap.sign : `${before} ${tap.sign}`, true);
    case 'back': {
      const found = signBefore.exec(before);
      const start = found === null ? '' : before.slice(0, -found[0].length).trimEnd();
      const spaced = start === '' ? '' : `${start} `;
      return { text: spaced + after.trimStart(), at: spaced.length };
    }
  }
}

/** The name of the section that comes next: A, B, C … */
export function nextSection(text: string): string {
  const named = [...text.matchAll(/\[([A-Z])\]/g)].map(([, letter = '@']) => letter.charCodeAt(0));
  return String.fromCharCode(Math.min(90, Math.max(64, ...named) + 1));
}
