// Source: Verovio 6.3 (LGPL, RISM Digital Center), an independent reader of MusicXML; see README.md.
/// <reference path="../../src/engraving/verovio/verovio-modules.d.ts" />
import tone from '@tonejs/midi';
import { VerovioToolkit } from 'verovio/esm';
import createVerovioModule from 'verovio/wasm';
import { expect, test } from 'vitest';
import { performScore, rest, type Score, type ScoreEvent, scoreToMusicXml } from '#music';
import { randomScore } from '../../src/music/score/random-score.contract.ts';

/** Notes with pitch only, as plain as can be: what two programs must play alike, whatever their taste. */
function plainEvent(event: ScoreEvent): ScoreEvent {
  if (event.kind === 'note') return { ...event, grace: [], articulations: [] };
  return event.kind === 'rest' ? event : { ...rest(event.duration), tuplet: event.tuplet };
}

function plain(score: Score): Score {
  const frame = { repeatStart: false, repeatEnd: false, ending: null, swing: null, tempo: null };
  return {
    ...score,
    bars: score.bars.map((bar) => ({ ...bar, ...frame })),
    parts: score.parts.map((part) => ({
      ...part,
      staves: part.staves.map(() => 'five-line' as const),
      bars: part.bars.map((bar) => ({
        ...bar,
        clefs: bar.clefs.map((clef) => (clef === 'tab' || clef === 'percussion' ? 'treble' : clef)),
        voices: bar.voices.map((voice) => ({ ...voice, events: voice.events.map(plainEvent) })),
      })),
    })),
  };
}

interface Onset {
  readonly midi: number;
  /** Crotchets. */
  readonly at: number;
}
const byPitch = (a: Onset, b: Onset) => a.midi - b.midi || a.at - b.at;

test('another program hears in our MusicXML the notes that we play', async () => {
  const toolkit = new VerovioToolkit(await createVerovioModule());
  toolkit.setOptions({ breaks: 'none' });
  let notes = 0;
  for (let seed = 0; seed < 150; seed++) {
    const score = plain(randomScore(seed));
    const ours = performScore(score)
      .notes.map(({ midi, start }): Onset => ({ midi, at: (4 * start.n) / start.d }))
      .sort(byPitch);
    expect(toolkit.loadData(scoreToMusicXml(score)), `seed ${seed}`).toBeTruthy();
    const { header, tracks } = new tone.Midi(Buffer.from(toolkit.renderToMIDI(), 'base64'));
    const theirs = tracks
      .flatMap((track) => track.notes)
      .map(({ midi, ticks }): Onset => ({ midi, at: ticks / header.ppq }))
      .sort(byPitch);
    expect(
      theirs.map(({ midi }) => midi),
      `seed ${seed}`,
    ).toEqual(ours.map(({ midi }) => midi));
    // Verovio counts 120 ticks in a crotchet and cuts tuplets off to them.
    theirs.forEach(({ at }, i) => {
      expect(Math.abs(at - (ours[i]?.at ?? Number.NaN)), `seed ${seed}`).toBeLessThan(0.03);
    });
    notes += ours.length;
  }
  expect(notes).toBeGreaterThan(2000);
});
