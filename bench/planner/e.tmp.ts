import { generateProblem } from './generate.ts';
import { solveWithHighs } from './solve-with-highs.ts';

const p = generateProblem(process.argv[2] as 'small', Number(process.argv[3]));
const h = await solveWithHighs(p, 30);
const m = h.plan!;
console.log('HIGHS', JSON.stringify(m.objective));
for (const l of m.lessons)
  console.log(l.lesson, l.chunks.map((c) => c.activity + ':' + c.minutes).join(' '), l.reviews.join(' '));
