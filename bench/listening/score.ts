// Scores src/listening on the take set: `npx tsx --conditions=levare-source bench/listening/score.ts [--group clean]
// [--split dev|held|all] [--sound computed|Fluid|MuseScore] [--id dev-clean-3] [--dir DIR] [--each] [--misses]`.

import { parseArgs } from 'node:util';
import { frequencyToMidi } from '#music';
import { takesFolder } from './compare.ts';
import { ourListener } from './our-listener.ts';
import { readTakes } from './read-takes.ts';
import { formatScore, scoreListener } from './score-table.ts';

const { values } = parseArgs({
  options: {
    dir: { type: 'string', default: takesFolder },
    group: { type: 'string' },
    split: { type: 'string', default: 'dev' },
    sound: { type: 'string' },
    id: { type: 'string' },
    each: { type: 'boolean', default: false },
    misses: { type: 'boolean', default: false },
  },
});
const takes = readTakes({ ...values, split: values.split === 'all' ? undefined : values.split });
const listener = ourListener();
if (takes.length === 0)
  console.log(`No takes in ${values.dir}: write them with bench/listening/take-set/make-takes.ts first.`);
else {
  const score = await scoreListener(listener, takes, (take, f1, heard, missed) => {
    const { truth } = take;
    if (values.each || values.misses)
      console.log(
        `${truth.id.padEnd(18)} ${f1.toFixed(3)}  ${truth.instrument} ${truth.sound} ♩=${truth.context.tempo}  ${heard.notes.length} heard, ${truth.truth.notes.length} true`,
      );
    if (values.misses)
      for (const note of missed)
        console.log(
          `    missed ${note.midi} ${note.cents.toFixed(0)}c at ${note.onset.toFixed(3)}-${note.offset.toFixed(3)}; near: ${heard.notes
            .filter((h) => Math.abs(h.onset - note.onset) < 0.2)
            .map((h) => `${frequencyToMidi(h.hz).toFixed(2)} ${h.onset.toFixed(3)}-${h.offset.toFixed(3)}`)
            .join(', ')}`,
        );
  });
  console.log(formatScore(score));
}
