import { solve } from '#planning';
import { generateProblem } from './generate.ts';

const [size, s] = [process.argv[2] as 'small', Number(process.argv[3])];
const p = generateProblem(size, s);
console.log(
  JSON.stringify({
    a: p.alpha,
    run: p.maxRun,
    gap: p.parkGap,
    w: p.weights,
    sg: p.sigma,
    tau: p.tau,
    rg: p.reviewGapDays,
  }),
);
console.log(
  p.lessons
    .map((l) => `${l.length}-${l.fixed} r${l.recap} rm${l.reviewMax} b${l.maxBlocks} s${l.maxStrands}`)
    .join(' | '),
);
for (const a of p.activities)
  console.log(
    a.id,
    a.strand,
    a.kind,
    'd',
    a.demand,
    a.minChunk,
    a.maxChunk,
    'w',
    a.weight,
    a.value,
    'win',
    a.first,
    a.last,
    'rev',
    a.review,
    'pre',
    a.preds.join(),
    'rec',
    a.recent?.join(''),
  );
console.log(p.reviews.map((r) => `${r.id} m${r.minutes} due${r.due} w${r.weight}`).join(' | '));
for (const steps of [5000, Number(process.argv[4] ?? 200000)]) {
  const m = solve(p, { steps });
  console.log(JSON.stringify(m.objective));
  for (const l of m.lessons)
    console.log(l.lesson, l.chunks.map((c) => c.activity + ':' + c.minutes).join(' '), l.reviews.join(' '));
}
