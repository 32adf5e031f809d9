import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createSeededRandom } from '#core';
import { createModel } from '../../src/planning/solve/model.ts';
import { search } from '../../src/planning/solve/search.ts';
import { generateProblem, problemSizes } from './generate.ts';

// usage: x.tmp.ts stepsScale seeds [record]
const scale = Number(process.argv[2] ?? 1),
  seeds = Number(process.argv[3] ?? 2),
  record = process.argv[4] === 'record';
const bestFile = '/tmp/best.json';
const best: Record<string, number[]> = existsSync(bestFile) ? JSON.parse(readFileSync(bestFile, 'utf8')) : {};
if (existsSync('/tmp/dev.json'))
  for (const r of JSON.parse(readFileSync('/tmp/dev.json', 'utf8')))
    if (r.objective) upd(`${r.size}-${r.seed}`, [r.objective.U, r.objective.P, r.objective.E]);
function cmp(a: number[], b: number[]) {
  for (let k = 0; k < 3; k++) {
    if (Math.abs(a[k]! - b[k]!) > 1e-6) return a[k]! < b[k]! ? -(k + 1) : k + 1;
  }
  return 0;
}
function upd(k: string, v: number[]) {
  const c = best[k];
  if (!c || cmp(v, c) < 0) {
    best[k] = v;
    return true;
  }
  return false;
}
const counts = { small: [1, 40], medium: [1, 20], large: [1, 10] } as const;
const per={small:9000,medium:9000,large:36000} as const;
const only = process.argv[5];
for (const size of problemSizes) {
  if (only && !only.includes(size)) continue;
  let pts = 0,
    n = 0,
    eq = 0,
    wU = 0,
    wP = 0,
    wE = 0,
    gU = 0,
    gP = 0,
    worstU = 0,
    worstP = 0;
  const ts: number[] = [];
  let rounds = 0;
  const misses: string[] = [];
  for (let s = counts[size][0]; s <= counts[size][1]; s++) {
    const m = createModel(generateProblem(size, s));
    const key = `${size}-${s}`;
    let miss = '';
    for (let k = 1; k <= seeds; k++) {
      const t = process.cpuUsage().user / 1000;
      const r = search(m, createSeededRandom(k * 7919), per[size] * scale, null);
      ts.push(process.cpuUsage().user / 1000 - t);
      rounds += r.rounds;
      const v = [...r.score.subarray(0, 3)];
      if (record) {
        upd(key, v);
        continue;
      }
      const b = best[key];
      if (!b) {
        continue;
      }
      n++;
      const c = cmp(v, b);
      if (c > 0) pts += 4 - c;
      if (c <= 0) eq++;
      else if (c === 1) {
        wU++;
        miss += 'U';
      } else if (c === 2) {
        wP++;
        miss += 'P';
      } else {
        wE++;
        miss += 'E';
      }
      const u = b[0]! > 0 ? (v[0]! - b[0]!) / b[0]! : v[0]! > 0 ? 1 : 0;
      gU += u;
      pts += Math.min(1, u) * 3;
      worstU = Math.max(worstU, u);
      if (Math.abs(v[0]! - b[0]!) < 1e-6) { if (process.env['MISS'] && v[1]!>b[1]!*1.1+1e-6) console.log(key, v.join('/'), b.join('/'));
        const p = b[1]! > 0 ? (v[1]! - b[1]!) / b[1]! : v[1]! > 1e-9 ? 1 : 0;
        gP += p;
        pts += Math.min(1, p);
        worstP = Math.max(worstP, p);
      }
    }
    if (miss) misses.push(s + miss);
  }
  ts.sort((a, b) => a - b);
  console.log(
    size,
    record
      ? 'recorded'
      : `pts ${(pts / n).toFixed(3)} eq ${((100 * eq) / n).toFixed(0)}% worse U ${wU} P ${wP} E ${wE} of ${n}; gap U ${((100 * gU) / n).toFixed(2)}% P ${((100 * gP) / n).toFixed(2)}% worst U ${(100 * worstU).toFixed(1)} P ${(100 * worstP).toFixed(1)}`,
    `p50 ${ts[ts.length >> 1]!.toFixed(1)} p95 ${ts[Math.floor(ts.length * 0.95)]!.toFixed(1)} rounds ${(rounds / ts.length).toFixed(0)}`,
    (process.env['MISS'] ? misses : []).join(' '),
  );
}
if (record) writeFileSync(bestFile, JSON.stringify(best));
