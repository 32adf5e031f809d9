// Listens to a take off the page's thread, stage by stage, so that the page can say how far it is. Cancelling ends the worker.

import { waveformPoints } from '#contract';
import { alignTake, findLetGo, gatherEvidence, hearNotes, parseTakeContext } from '#listening';
import type { HeardEvidence, ListenMessage, ListenProgress, ListenWish } from './listening-message.ts';

/** Share of the work, measured on takes of one minute: finding the notes is nearly all of it. */
const shares = { notes: 0.05, beat: 0.9, evidence: 0.95 } as const;

const tell = (message: ListenMessage) => self.postMessage(message);
const begin = (stage: ListenProgress['stage']) => tell({ progress: { stage, share: shares[stage] } });

function hear({ samples, sampleRate, context: written }: ListenWish): HeardEvidence | string {
  const parsed = parseTakeContext(written);
  if (!parsed.ok) return parsed.error.message;
  begin('notes');
  const hearing = hearNotes(samples, sampleRate, parsed.value);
  begin('beat');
  const ends = findLetGo(samples, sampleRate, hearing.notes);
  const alignment = alignTake(hearing.notes, parsed.value, ends);
  // a grid found beside the click that was given means the playing did not keep to it
  const isOff = parsed.value.offsetS !== null && alignment?.grid.isGiven !== true;
  const context = isOff ? { ...parsed.value, offsetS: null } : parsed.value;
  begin('evidence');
  const evidence = gatherEvidence(
    { samples, sampleRate, context, notes: hearing.notes, ends, f0: hearing.f0, alignment },
    hearing.problems,
  );
  return {
    heard: {
      seconds: samples.length / sampleRate,
      notes: hearing.notes,
      alignment,
      problems: hearing.problems,
      waveform: drawWaveform(samples),
    },
    evidence,
    context: isOff ? { ...written, offsetS: null } : written,
  };
}

function drawWaveform(samples: Float32Array): readonly number[] {
  const step = Math.max(1, Math.ceil(samples.length / waveformPoints));
  return Array.from({ length: Math.ceil(samples.length / step) }, (_, point) => {
    let loudest = 0;
    for (let i = point * step; i < Math.min((point + 1) * step, samples.length); i++)
      loudest = Math.max(loudest, Math.abs(samples[i] ?? 0));
    return Math.min(1, Math.round(loudest * 1000) / 1000);
  });
}

self.addEventListener('message', ({ data }: MessageEvent<ListenWish>) => {
  const heard = hear(data);
  tell(typeof heard === 'string' ? { fault: heard } : { result: heard });
});
