import { describe, expect, it } from 'vitest';
import { keyPlace, lessonAction } from './lesson-keys.ts';

const press = (key: string, held: { ctrlKey?: boolean; altKey?: boolean; metaKey?: boolean } = {}) => ({
  key,
  ctrlKey: false,
  altKey: false,
  metaKey: false,
  ...held,
});

describe('keys of teaching mode', () => {
  it.each([
    ['ArrowRight', 'next'],
    ['PageDown', 'next'],
    ['ArrowLeft', 'previous'],
    ['PageUp', 'previous'],
    [' ', 'clock'],
    ['m', 'moveOn'],
    ['M', 'moveOn'],
    ['?', 'keys'],
  ])('%s is %s', (key, kind) => expect(lessonAction(press(key), 'page', true)?.kind).toBe(kind));

  it('records levels by digit and knows no fifth', () => {
    expect(lessonAction(press('3'), 'page', true)).toEqual({ kind: 'level', level: 3 });
    expect(lessonAction(press('5'), 'page', true)).toBeNull();
  });
  it('leaves every key to text that is typed, and every held key to the browser', () => {
    for (const key of ['ArrowRight', 'PageDown', ' ', 'm', '3']) {
      expect(lessonAction(press(key), 'text', true)).toBeNull();
      expect(lessonAction(press(key, { ctrlKey: true }), 'page', true)).toBeNull();
    }
  });
  it('leaves arrows and space to a control, but the pedal still turns', () => {
    expect(lessonAction(press('ArrowRight'), 'control', true)).toBeNull();
    expect(lessonAction(press(' '), 'control', true)).toBeNull();
    expect(lessonAction(press('PageDown'), 'control', true)?.kind).toBe('next');
  });
  it('with single keys off answers only arrows and page keys (WCAG 2.2 SC 2.1.4)', () => {
    for (const key of ['m', 'c', 's', 'x', 'n', 'l', 'w', '?', '0', '4', ' '])
      expect(lessonAction(press(key), 'page', false)).toBeNull();
    expect(lessonAction(press('PageUp'), 'page', false)?.kind).toBe('previous');
  });
});

describe('keyPlace', () => {
  const within = (...selectors: string[]) => ({
    closest: (asked: string) => (asked.split(', ').some((one) => selectors.includes(one)) ? {} : null),
  });
  it('tells text, controls and the page apart', () => {
    expect(keyPlace(within('textarea'), 'm')).toBe('text');
    expect(keyPlace(within('[role=radiogroup]'), 'ArrowRight')).toBe('control');
    expect(keyPlace(within('button'), ' ')).toBe('control');
    expect(keyPlace(within('button'), 'ArrowRight')).toBe('page');
    expect(keyPlace(null, 'm')).toBe('page');
  });
});
