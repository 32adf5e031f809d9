import { describe, expect, it } from 'vitest';
import { keyToIntent } from './score-keys.ts';

const press = (key: string, held: Partial<Record<'ctrlKey' | 'altKey' | 'metaKey', boolean>> = {}) => ({
  key,
  ctrlKey: false,
  altKey: false,
  metaKey: false,
  ...held,
});

describe('keys on the score', () => {
  it.each([
    ['ArrowLeft', { kind: 'go', direction: 'left' }],
    ['ArrowDown', { kind: 'go', direction: 'down' }],
    ['Home', { kind: 'go', direction: 'home' }],
    ['Enter', { kind: 'open' }],
    [' ', { kind: 'open' }],
    ['p', { kind: 'pin' }],
    ['S', { kind: 'setAside' }],
    ['m', { kind: 'move' }],
    ['x', null],
    ['Tab', null],
  ])('%s', (key, intent) => {
    expect(keyToIntent(press(key), false)).toEqual(intent);
  });

  it('goes to the ends of the course with Control', () => {
    expect(keyToIntent(press('Home', { ctrlKey: true }), false)).toEqual({ kind: 'go', direction: 'first' });
    expect(keyToIntent(press('End', { ctrlKey: true }), false)).toEqual({ kind: 'go', direction: 'last' });
  });

  it('leaves the browser its own keys', () => {
    for (const held of [{ ctrlKey: true }, { altKey: true }, { metaKey: true }])
      for (const key of ['p', 's', 'm', 'ArrowLeft', 'Enter'])
        expect(keyToIntent(press(key, held), false)).toBeNull();
  });

  it('chooses a lesson with the arrows while a segment is moved, and nothing else', () => {
    expect(keyToIntent(press('ArrowRight'), true)).toEqual({ kind: 'step', by: 1 });
    expect(keyToIntent(press('ArrowUp'), true)).toEqual({ kind: 'step', by: -1 });
    expect(keyToIntent(press('Enter'), true)).toEqual({ kind: 'land' });
    expect(keyToIntent(press('Escape'), true)).toEqual({ kind: 'giveUp' });
    for (const key of ['p', 's', 'm', ' ', 'Home']) expect(keyToIntent(press(key), true)).toBeNull();
  });
});
