// How long each sampled instrument takes to speak: `npx tsx --conditions=levare-source bench/listening/take-set/delays.ts`.

import { takeInstruments } from './instruments.data.ts';
import { measurePitch, measureStem } from './measure-stem.ts';
import { type BankName, openBank } from './sampled.ts';

const rate = 44100;
for (const name of ['FluidR3Mono_GM', 'MuseScore_General_Lite'] as const satisfies readonly BankName[]) {
  const bank = await openBank(name, rate);
  console.log(`${name}: ms from note-on to 30, 20 and 10 dB below the peak; offset after note-off; cents`);
  for (const instrument of takeInstruments) {
    const rows: number[][] = [];
    for (let midi = instrument.low; midi <= instrument.high; midi += 5) {
      const sound = bank.note(instrument.program, midi, 84, 0.4, 0.4);
      const at = [30, 20, 10].map((fall) => measureStem(sound, rate, 0.4, fall).onset * 1000);
      const pitch = [...measurePitch(sound, rate, midi, 0.02)]
        .filter((p) => !Number.isNaN(p))
        .sort((a, b) => a - b);
      rows.push([
        ...at,
        (measureStem(sound, rate, 0.4).offset - 0.4) * 1000,
        ((pitch[Math.floor(pitch.length / 2)] ?? Number.NaN) - midi) * 100,
      ]);
    }
    const column = (c: number) => rows.map((row) => (row[c] ?? 0).toFixed(0).padStart(4)).join('');
    console.log(instrument.id.padEnd(18), '30:', column(0), ' 20:', column(1), ' 10:', column(2));
    console.log(''.padEnd(18), 'off', column(3), ' cents', column(4));
  }
}
