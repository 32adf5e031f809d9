import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

// Source: W3C, Web Content Accessibility Guidelines 2.2 (5 October 2023): 1.4.3 contrast (minimum) 4.5:1 for text,
// 1.4.11 non-text contrast 3:1; definitions of relative luminance and contrast ratio in its glossary.

function luminanceOf(hex: string): number {
  const digits = hex.length === 4 ? [...hex.slice(1)].map((d) => d + d).join('') : hex.slice(1);
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => {
    const channel = Number.parseInt(digits.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrastOf(one: string, other: string): number {
  const [low = 0, high = 0] = [luminanceOf(one), luminanceOf(other)].sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}

const css = readFileSync(new URL('./tokens.css', import.meta.url), 'utf8');
const colours = new Map(
  [...css.matchAll(/--([a-z0-9-]+):\s*light-dark\(\s*(#[0-9a-f]{3,6})\s*,\s*(#[0-9a-f]{3,6})\s*\)/gi)].map(
    ([, name = '', paper = '', hall = '']) => [name, { paper, hall }],
  ),
);
const grounds = ['paper', 'paper-deep', 'paper-raised'];
const strands = [0, 1, 2, 3];

const texts: [string, string][] = [
  ...grounds.flatMap((g): [string, string][] =>
    ['ink', 'ink-soft', 'ink-faint', 'amber-text', 'fault', ...strands.map((n) => `strand-${n}`)].map((t) => [
      t,
      g,
    ]),
  ),
  ...strands.flatMap((n): [string, string][] => [
    ['ink', `strand-${n}-wash`],
    ['ink-soft', `strand-${n}-wash`],
    [`strand-${n}`, `strand-${n}-wash`],
  ]),
  ['on-amber', 'amber'],
  ['on-amber', 'amber-deep'],
  ['ink', 'amber-wash'],
  ['ink-soft', 'amber-wash'],
  ['amber-text', 'amber-wash'],
  ['fault', 'fault-wash'],
  ['ink', 'fault-wash'],
  ['ink', 'selection'],
];
const marks: [string, string][] = grounds.flatMap((g): [string, string][] => [
  ['amber', g],
  ['line', g],
  ['focus', g],
]);

function measure(one: string, other: string, theme: 'paper' | 'hall'): number {
  const front = colours.get(one)?.[theme];
  const back = colours.get(other)?.[theme];
  if (!front || !back) throw new Error(`--${one} or --${other} is not in tokens.css`);
  return contrastOf(front, back);
}

describe('contrast', () => {
  test('is reckoned as WCAG defines it', () => {
    expect(contrastOf('#000', '#fff')).toBeCloseTo(21, 5);
    // Source: WebAIM's published example of the lightest grey that passes AA on white, #767676 at 4.54:1.
    expect(contrastOf('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });

  for (const theme of ['paper', 'hall'] as const) {
    test.each(texts)(`${theme}: --%s reads on --%s (4.5:1)`, (one, other) => {
      expect(measure(one, other, theme)).toBeGreaterThanOrEqual(4.5);
    });
    test.each(marks)(`${theme}: --%s is seen on --%s (3:1)`, (one, other) => {
      expect(measure(one, other, theme)).toBeGreaterThanOrEqual(3);
    });
  }
});
