import { describe, expect, it } from 'vitest';
import { bestText, hearWhole, keptText, releaseText, typeText } from './kept-text.ts';

describe('text kept while it is typed', () => {
  it('shows what another wrote when the hands leave, and not before', () => {
    const typed = typeText(keptText(''), 'bow hold');
    const heard = hearWhole(typed, 'From the other window\n\nbow hold');
    expect(heard.shown).toBe('bow hold');
    const next = typeText(heard, 'bow hold better');
    expect(next.whole).toBe('From the other window\n\nbow hold better');
    expect(releaseText(next)).toEqual(keptText('From the other window\n\nbow hold better'));
  });
  it('goes on in its own words, where another began with the same', () => {
    let state = hearWhole(typeText(keptText(''), 'To'), 'To\n\nTo do');
    for (const shown of ['Ton', 'Tone', 'Tone:']) state = typeText(state, shown);
    expect(state.whole).toBe('Tone:\n\nTo do');
    expect(typeText(state, 'Tone:\nwarm').whole).toBe('Tone:\nwarm\n\nTo do');
  });
  it('makes every change in the whole text too, however often others write', () => {
    let state = keptText('Scale. Piece.');
    state = hearWhole(state, 'Scale in D. Piece.');
    state = typeText(state, 'Scale. Piece: slowly.');
    state = hearWhole(state, 'Scale in D, twice. Piece: slowly.');
    state = typeText(state, 'Long notes. Scale. Piece: slowly.');
    expect(state.whole).toBe('Long notes. Scale in D, twice. Piece: slowly.');
    state = typeText(state, 'Long notes. Piece: slowly.');
    // What was taken away here and changed there stays as it was changed.
    expect(state.whole).toContain('in D, twice');
  });
  it('keeps both when another put other words in the place of those that were changed here', () => {
    const state = typeText(hearWhole(keptText('old'), 'theirs'), 'old and mine');
    expect(state.whole).toBe('theirs and mine');
    const both = typeText(hearWhole(keptText('old'), 'theirs'), 'mine');
    expect(both.whole).toBe('theirs\n\nmine');
  });
  it('is the same state when there is nothing to hear or to let go', () => {
    const state = keptText('a');
    expect(hearWhole(state, 'a')).toBe(state);
    expect(releaseText(state)).toBe(state);
  });
});

it('takes its own words for newer than what the studio told before it had them', () => {
  expect(bestText(null, 'told', 4)).toBe('told');
  expect(bestText({ text: 'on its way', revision: null }, 'told', 4)).toBe('on its way');
  expect(bestText({ text: 'written', revision: 5 }, 'told', 4)).toBe('written');
  expect(bestText({ text: 'written', revision: 5 }, 'told', 5)).toBe('told');
});
