import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  forgetEchoes,
  type KeptText,
  keptText,
  releaseText,
  sendText,
  storedText,
  typeText,
} from './kept-text.ts';

/** The rule of the contract's write: neither base nor text stored → both kept, one above the other. */
const write = (stored: string, base: string, text: string): string =>
  stored === base || stored === text ? text : `${stored}\n${text}`;

const present = <T>(value: T | null): T => {
  if (value === null) throw new Error('nothing to send');
  return value;
};

describe('text kept while it is typed', () => {
  it('sends base and text, then the next write stands on the one before', () => {
    const first = present(sendText(typeText(keptText('ok'), 'ok, slower')));
    expect([first.base, first.text]).toEqual(['ok', 'ok, slower']);
    const second = present(sendText(typeText(first.state, 'ok, slower.')));
    expect([second.base, second.text]).toEqual(['ok, slower', 'ok, slower.']);
  });
  it('has nothing to send when nothing was typed', () => {
    expect(sendText(keptText('ok'))).toBeNull();
  });
  it('is not thrown back by an older echo of its own', () => {
    const first = present(sendText(typeText(keptText(''), 'a')));
    const second = present(sendText(typeText(first.state, 'ab')));
    expect(storedText(second.state, 'a', false).shown).toBe('ab');
    expect(storedText(second.state, '', false).shown).toBe('ab');
  });
  it('takes the text it began from for no news, however much was typed since', () => {
    let state = keptText('Warm. ');
    for (let n = 0; n < 200; n++) state = present(sendText(typeText(state, `${state.shown}x`))).state;
    const heard = storedText(state, 'Warm. ', true);
    expect(heard).toMatchObject({ shown: state.shown, base: state.base, before: '', after: '' });
    // An echo of what was sent long ago is none either.
    expect(storedText(state, 'Warm. xxx', true)).toMatchObject({ base: state.base, before: '' });
  });
  it('shows the older text again after an undo', () => {
    const { state } = present(sendText(typeText(keptText('a'), 'ab')));
    const saved = storedText(state, 'ab', false);
    expect(storedText(saved, 'a', false).shown).toBe('ab');
    expect(storedText(forgetEchoes(saved), 'a', false).shown).toBe('a');
  });
  it('shows what another window wrote when the field is free', () => {
    expect(storedText(keptText('a'), 'b', false).shown).toBe('b');
  });
  it('keeps its own text while in hand, and the other text around it, until the hands leave', () => {
    let state = typeText(keptText(''), 'bow hold');
    const sent = present(sendText(state));
    state = storedText(sent.state, 'From the other window\nbow hold', true);
    expect(state.shown).toBe('bow hold');
    const next = present(sendText(typeText(state, 'bow hold better')));
    expect(next.base).toBe('From the other window\nbow hold');
    expect(next.text).toBe('From the other window\nbow hold better');
    expect(releaseText(next.state).shown).toBe('From the other window\nbow hold better');
  });
  it('keeps both when another window replaced the text while words were unsent', () => {
    const state = storedText(typeText(keptText('old'), 'old and mine'), 'theirs', true);
    const sent = present(sendText(state));
    expect(write('theirs', sent.base, sent.text)).toBe('theirs\nold and mine');
  });

  it('loses no word of two windows, and both end with the same text (law)', () => {
    const act = fc.record({
      who: fc.constantFrom<0 | 1>(0, 1),
      what: fc.constantFrom('type', 'type', 'send', 'deliver', 'look', 'leave'),
    });
    fc.assert(
      fc.property(fc.array(act, { minLength: 1, maxLength: 60 }), (acts) => {
        let server = '';
        let count = 0;
        const words: string[] = [];
        const windows: { state: KeptText; queue: { base: string; text: string }[]; inHand: boolean }[] = [
          { state: keptText(''), queue: [], inHand: false },
          { state: keptText(''), queue: [], inHand: false },
        ];
        const send = (w: (typeof windows)[number]) => {
          const out = sendText(w.state);
          if (!out) return;
          w.state = out.state;
          w.queue.push(out);
        };
        const deliver = (w: (typeof windows)[number]) => {
          const out = w.queue.shift();
          if (out) server = write(server, out.base, out.text);
        };
        const look = (w: (typeof windows)[number]) => {
          if (w.queue.length === 0) w.state = storedText(w.state, server, w.inHand);
        };
        for (const { who, what } of acts) {
          const w = windows[who];
          if (!w) continue;
          if (what === 'type') {
            const word = `w${count++};`;
            words.push(word);
            w.inHand = true;
            w.state = typeText(w.state, w.state.shown + word);
          } else if (what === 'send') send(w);
          else if (what === 'deliver') deliver(w);
          else if (what === 'look') look(w);
          else {
            send(w);
            w.inHand = false;
            w.state = releaseText(w.state);
          }
        }
        for (const w of windows) {
          send(w);
          while (w.queue.length > 0) deliver(w);
          w.inHand = false;
        }
        for (const w of windows) {
          w.state = releaseText(w.state);
          look(w);
        }
        for (const word of words) expect(server).toContain(word);
        for (const w of windows) expect(w.state.shown).toBe(server);
      }),
      { seed: 7, numRuns: 2000 },
    );
  });
});
