// How fast the band plays, in seconds of audio for each second of CPU, beside fluidsynth (LGPL-2.1, Debian's package, for
// development only) on the same MIDI file and the same bank in the same run, both with loading and with a room.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { arrange, arrangementToMidi, backingToSpec, type FeelId, parseBackingMaterial } from '#music';
import { createBand } from '#sound';

const rate = 44_100;
const feels: readonly FeelId[] = ['swing', 'bossa', 'rock', 'ballad'];
const chart = '[A] Cm7 | F7 | Bbmaj7 | Ebmaj7 | [B] Am7b5 | D7 | Gm7 C7 | Cm7 F7';
const bank = join(import.meta.dirname, '../dist/sound/band.sf3');

/** Prints the figures. False when a track could not be made. */
export async function runSoundBench(): Promise<boolean> {
  const folder = mkdtempSync(join(tmpdir(), 'levare-sound-'));
  const hasOther = spawnSync('fluidsynth', ['--version']).error === undefined;
  console.log(
    `\nThe band (${rate} Hz, stereo; seconds of audio per second of CPU)\n  feel       audio     ours  fluidsynth`,
  );
  try {
    for (const feel of feels) {
      const material = parseBackingMaterial({ kind: 'backing', chart, feel, choruses: 6, tempo: 120 });
      if (!material.ok) return false;
      const arrangement = arrange(backingToSpec(material.value), 1);
      const midi = join(folder, `${feel}.mid`);
      writeFileSync(midi, arrangementToMidi(arrangement, feel));
      const before = process.cpuUsage();
      const track = await createBand(readFileSync(bank), rate).play(arrangement);
      for (let done = 0; done < track.length; ) done += track.next(rate).left.length;
      const used = process.cpuUsage(before);
      const seconds = track.length / rate;
      const ours = seconds / ((used.user + used.system) / 1e6);
      const other = hasOther ? fluidsynth(midi, join(folder, 'other.raw')) : null;
      const theirs = other === null ? 'not here' : other.toFixed(0).padStart(10);
      console.log(
        `  ${feel.padEnd(9)} ${seconds.toFixed(0).padStart(4)} s ${ours.toFixed(0).padStart(8)}  ${theirs}`,
      );
    }
    return true;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Seconds of audio for each second of CPU, as the shell counts its children's. */
function fluidsynth(midi: string, out: string): number | null {
  const words = `fluidsynth -ni -q -r ${rate} -R 1 -C 0 -T raw -O float -F '${out}' '${bank}' '${midi}'; times`;
  const done = spawnSync('sh', ['-c', words], { encoding: 'utf8' });
  const spent = [...(done.stdout.trim().split('\n').at(-1) ?? '').matchAll(/(\d+)m([\d.]+)s/g)]
    .map(([, minutes, seconds]) => 60 * Number(minutes) + Number(seconds))
    .reduce((sum, one) => sum + one, 0);
  const frames = statSync(out).size / 8;
  return spent > 0 && frames > 0 ? frames / rate / spent : null;
}
