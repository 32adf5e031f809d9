// What stood in the way of hearing a take, as a sentence with a remedy.

import { unreachable } from '#core';
import type { Problem } from '../notes/problem.ts';

/** `{ kind: 'TooShort', seconds: 0.05 }` → The recording lasts 0.05 s: too short to hear notes in. */
export function describeProblem(problem: Problem): string {
  switch (problem.kind) {
    case 'RateUnusable':
      return `The recording has ${problem.sampleRate} samples a second, which cannot be read: save it at 44100 or 48000.`;
    case 'TooShort':
      return `The recording lasts ${problem.seconds.toFixed(2)} s: too short to hear notes in.`;
    case 'TooQuiet':
      return `The recording is silent or very quiet (${Math.round(problem.db)} dB): turn the input up, or come nearer.`;
    case 'Clipped':
      return `The recording is cut off at its loudest in ${percent(problem.share)} of the loud moments: turn the input down.`;
    case 'MostlyNoise':
      return `${percent(problem.share)} of the sound has no pitch: look for a quieter place, or come nearer.`;
    case 'MoreThanOneVoice':
      return `Other pitches sound beside ${percent(problem.share)} of the notes: record one player alone, with the backing on headphones.`;
    case 'BackingTooLoud':
      return `What sounds between the notes is only ${Math.round(problem.db)} dB softer than they are: play the backing through headphones.`;
    case 'OutsideRange':
      return `${percent(problem.share)} of the notes lie outside what the instrument can play: was another one played, or does something else sound?`;
    case 'SpeechLike':
      return `The pitch glides as in talking in ${percent(problem.share)} of the time: those stretches are left out.`;
    default:
      return unreachable(problem);
  }
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
