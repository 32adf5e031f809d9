// The same planning problem as a mixed-integer programme in the LP format, for the MIP solver HiGHS: an outside
// reference for the planner. Level by level: U; then P with U held; then E with U and P held.
//
// y_i_l_k = 1: activity i has k minutes in lesson l. Each lesson's limit on sums of squares is exact: t_l_M picks the
// lesson's whole minutes M, and b_l_B the minutes of its opening block; Σ k² y + Σ B² b ≤ Σ limit(M) t.

import { evaluatePlan, type Plan, type PlannedLesson, type PlanningProblem, squareLimits } from '#planning';
import { reviewDues } from '../../src/planning/problem/review-due.ts';

export type Level = 'U' | 'P' | 'E';

/** Names are `kind_index_index…`; a plan is read back from the y and v that are 1. */
export interface MipModel {
  /** The LP file that makes one level small while the levels before it are held at most at the given values. */
  readonly lpFor: (level: Level, held: Readonly<Partial<Record<Level, number>>>) => string;
  readonly planFrom: (amountOf: (name: string) => number) => Plan;
}

type Terms = Map<string, number>;

export function createMipModel(problem: PlanningProblem): MipModel {
  const { lessons, activities, strands, reviews, weights, maxRun, parkGap } = problem;
  const T = lessons.length;
  const rows: string[] = [];
  const binaries: string[] = [];
  const continuous: string[] = [];
  const binary = (name: string): string => {
    binaries.push(name);
    return name;
  };
  const row = (terms: Terms, sense: '<=' | '>=' | '=', right: number): void => {
    const text = formatTerms(terms);
    if (text === '') return;
    rows.push(`r${rows.length}: ${text} ${sense} ${right}`);
  };
  const objectives: Record<Level, Terms> = { U: new Map(), P: new Map(), E: new Map() };
  const constants: Record<Level, number> = { U: 0, P: 0, E: 0 };
  const dues = reviewDues(lessons, problem.reviewGapDays);
  const indexById = new Map(activities.map(({ id }, i) => [id, i]));
  const lessonMinutes: Terms[] = lessons.map(() => new Map());
  const lessonSquares: Terms[] = lessons.map(() => new Map());
  const lessonReviews: Terms[] = lessons.map(() => new Map());
  const used = activities.map(() => lessons.map((): string | null => null));

  const minutesOf: Terms[] = [];
  activities.forEach((activity, i) => {
    const { demand, minChunk, maxChunk, first, last } = activity;
    const minutes: Terms = new Map();
    minutesOf.push(minutes);
    const usedTerms: Terms = new Map();
    for (let l = Math.max(0, first); l <= Math.min(T - 1, last); l++) {
      const lesson = lessons[l];
      if (lesson === undefined) continue;
      const most = Math.min(maxChunk, demand, lesson.length - lesson.fixed - lesson.recap);
      if (most < Math.max(1, minChunk)) continue;
      const u = binary(`u_${i}_${l}`);
      const row0: Terms = new Map([[u, -1]]);
      for (let k = Math.max(1, minChunk); k <= most; k++) {
        const y = binary(`y_${i}_${l}_${k}`);
        row0.set(y, 1);
        minutes.set(y, k);
        lessonMinutes[l]?.set(y, k);
        lessonSquares[l]?.set(y, k * k);
        objectives.E.set(y, l * k);
      }
      row(row0, '=', 0);
      usedTerms.set(u, 1);
      const usedRow = used[i];
      if (usedRow !== undefined) usedRow[l] = u;
    }
    row(minutes, '<=', demand);
    if (activity.kind === 'core' && activity.weight > 0) {
      constants.U += activity.weight * demand;
      for (const [y, k] of minutes) objectives.U.set(y, -activity.weight * k);
    }
    // splits: chunks beyond the first
    if (weights.split > 0 && usedTerms.size > 0) {
      const n = `n_${i}`;
      continuous.push(n);
      row(new Map([...usedTerms, [n, -1]]), '<=', 1);
      objectives.P.set(n, weights.split);
    }
  });

  // completion: d_i_l = 1 when complete by the end of lesson l (non-decreasing); f_i = d_i_{T-1}
  const complete = (i: number, l: number): string => `d_${i}_${l}`;
  activities.forEach((activity, i) => {
    const { demand, minChunk } = activity;
    if (demand === 0) return;
    const minutes = minutesOf[i] ?? new Map();
    const sumUpTo = (l: number): Terms => new Map([...minutes].filter(([y]) => Number(y.split('_')[2]) <= l));
    for (let l = 0; l < T; l++) {
      const d = binary(complete(i, l));
      const upTo = sumUpTo(l);
      // complete → the minutes are there; all the minutes there → complete
      row(new Map([[d, demand], ...negated(upTo)]), '<=', 0);
      row(new Map([...upTo, [d, -1]]), '<=', demand - 1);
      if (l > 0)
        row(
          new Map([
            [complete(i, l - 1), 1],
            [d, -1],
          ]),
          '<=',
          0,
        );
    }
    // REST: demand − s ≥ minChunk unless complete
    const finished = complete(i, T - 1);
    row(new Map([...minutes, [finished, -Math.max(1, minChunk)]]), '<=', demand - Math.max(1, minChunk));
    if (activity.kind === 'ext' && activity.value > 0) {
      constants.P += activity.value;
      objectives.P.set(finished, (objectives.P.get(finished) ?? 0) - activity.value);
    }
    // PREREQUISITE
    for (const pred of new Set(activity.preds)) {
      const p = indexById.get(pred) ?? -1;
      if ((activities[p]?.demand ?? 0) === 0) continue;
      (used[i] ?? []).forEach((u, l) => {
        if (u !== null)
          row(
            new Map([
              [u, 1],
              [complete(p, l), -1],
            ]),
            '<=',
            0,
          );
      });
    }
    addRunRows(i);
  });

  function addRunRows(i: number): void {
    const before = maxRun + parkGap - 1;
    const recent = activities[i]?.recent ?? [];
    const slot = (t: number): string | 0 | 1 =>
      t < before ? (recent[before - 1 - t] === 1 ? 1 : 0) : (used[i]?.[t - before] ?? 0);
    for (let t = 0; t + maxRun <= before + T; t++)
      for (let g = 0; g < parkGap; g++) {
        const at = t + maxRun + g;
        if (at < before || at >= before + T) continue;
        const terms: Terms = new Map();
        let right = maxRun;
        for (const part of [...Array.from({ length: maxRun }, (_, k) => slot(t + k)), slot(at)]) {
          if (typeof part === 'string') terms.set(part, 1);
          else right -= part;
        }
        if (typeof slot(at) === 'string') row(terms, '<=', right);
      }
  }

  // revisits
  const addReview = (r: number, minutes: number, weight: number, columns: (l: number) => void): void => {
    void minutes;
    void weight;
    for (let l = 0; l < T; l++) columns(l);
    void r;
  };
  reviews.forEach(({ minutes, due, weight }, r) => {
    if (due >= T) return;
    const once: Terms = new Map();
    constants.P += weights.late * weight * (T - due);
    addReview(r, minutes, weight, (l) => {
      if (l < due) return;
      const v = binary(`v_${r}_${l}`);
      once.set(v, 1);
      lessonReviews[l]?.set(v, minutes);
      objectives.P.set(v, -weights.late * weight * (T - l));
    });
    row(once, '<=', 1);
  });
  activities.forEach(({ review, demand }, i) => {
    if (review === 0 || T === 0) return;
    const r = reviews.length + i;
    const once: Terms = new Map();
    for (let l = 0; l < T; l++) {
      // v only from the due lesson on: complete by some lesson whose revisit is due by l
      let latest = -1;
      dues.forEach((due, c) => {
        if (due !== null && due <= l) latest = c;
      });
      if (latest < 0) continue;
      const v = binary(`v_${r}_${l}`);
      once.set(v, 1);
      lessonReviews[l]?.set(v, review);
      if (demand > 0)
        row(
          new Map([
            [v, 1],
            [complete(i, latest), -1],
          ]),
          '<=',
          0,
        );
      objectives.P.set(v, -weights.late * (T - l));
    }
    row(once, '<=', 1);
    // never done: T − due(completion lesson); the completion lesson is where d steps up
    for (let c = 0; c < T; c++) {
      const due = dues[c] ?? null;
      if (due === null) continue;
      const cost = weights.late * (T - due);
      if (demand === 0) {
        if (c === 0) constants.P += cost;
        continue;
      }
      const add = (name: string, by: number): void => {
        objectives.P.set(name, (objectives.P.get(name) ?? 0) + by);
      };
      add(complete(i, c), cost);
      if (c > 0) add(complete(i, c - 1), -cost);
    }
  });

  lessons.forEach((lesson, l) => {
    const C = lesson.length - lesson.fixed;
    const limits = squareLimits(C, problem.z, problem.sigma, problem.tau);
    const revisits = lessonReviews[l] ?? new Map();
    const minutes = lessonMinutes[l] ?? new Map();
    const squares: Terms = new Map(lessonSquares[l] ?? []);
    let fixedSquares = lesson.recap * lesson.recap;
    if (revisits.size > 0) {
      row(revisits, '<=', lesson.reviewMax);
      // the opening block's minutes, picked from the sums that can occur
      const pickOne: Terms = new Map();
      const pickSum: Terms = new Map(negated(revisits));
      for (let extra = 0; extra <= Math.min(lesson.reviewMax, C - lesson.recap); extra++) {
        const b = binary(`b_${l}_${extra}`);
        pickOne.set(b, 1);
        pickSum.set(b, extra);
        squares.set(b, (lesson.recap + extra) ** 2);
      }
      row(pickOne, '=', 1);
      row(pickSum, '=', 0);
      fixedSquares = 0;
    }
    if (minutes.size > 0 || revisits.size > 0) {
      const pickOne: Terms = new Map();
      const pickSum: Terms = new Map([...negated(minutes), ...negated(revisits)]);
      const withLimit: Terms = new Map(squares);
      limits.forEach((limit, M) => {
        if (M < lesson.recap || limit < 0) return;
        const t = binary(`t_${l}_${M}`);
        pickOne.set(t, 1);
        pickSum.set(t, M);
        withLimit.set(t, -limit);
      });
      row(pickOne, '=', 1);
      row(pickSum, '=', lesson.recap);
      row(withLimit, '<=', -fixedSquares);
    }
    const blocks: Terms = new Map();
    const byStrand = new Map<string, string[]>();
    used.forEach((usedRow, i) => {
      const u = usedRow[l];
      if (u === null || u === undefined) return;
      blocks.set(u, 1);
      const strand = activities[i]?.strand ?? '';
      byStrand.set(strand, [...(byStrand.get(strand) ?? []), u]);
    });
    row(blocks, '<=', lesson.maxBlocks);
    const present: Terms = new Map();
    for (const [strand, list] of byStrand) {
      const g = binary(`g_${l}_${strands.findIndex(({ id }) => id === strand)}`);
      present.set(g, 1);
      for (const u of list)
        row(
          new Map([
            [u, 1],
            [g, -1],
          ]),
          '<=',
          0,
        );
      row(new Map([...list.map((u): [string, number] => [u, -1]), [g, 1]]), '<=', 0);
    }
    row(present, '<=', lesson.maxStrands);
    if (strands.length > 1 && weights.solo > 0 && present.size > 0) {
      // solo_l ≥ g_s − Σ of the other strands: exactly one strand present costs
      const solo = `solo_${l}`;
      continuous.push(solo);
      objectives.P.set(solo, weights.solo);
      for (const g of present.keys()) {
        const terms: Terms = new Map([[solo, -1]]);
        for (const other of present.keys()) terms.set(other, other === g ? 1 : -1);
        row(terms, '<=', 0);
      }
    }
  });

  const lpFor: MipModel['lpFor'] = (level, held) => {
    const heldRows = (['U', 'P'] as const).flatMap((name) => {
      const most = held[name];
      const text = formatTerms(objectives[name]);
      return most === undefined || text === ''
        ? []
        : [`h${name}: ${text} <= ${most - constants[name] + 1e-6}`];
    });
    const goal = formatTerms(objectives[level]) || '0 zero';
    const bounds = [...continuous.map((name) => `0 <= ${name}`), '0 <= zero <= 0'];
    return [
      'Minimize',
      ` obj: ${goal}`,
      'Subject To',
      ...rows.map((text) => ` ${text}`),
      ...heldRows.map((text) => ` ${text}`),
      ' rz: zero = 0',
      'Bounds',
      ...bounds.map((text) => ` ${text}`),
      'Binary',
      ...binaries.map((name) => ` ${name}`),
      'End',
    ].join('\n');
  };

  const planFrom: MipModel['planFrom'] = (amountOf) => {
    const planned: PlannedLesson[] = lessons.map((_, l) => ({
      lesson: l,
      chunks: activities.flatMap(({ id, demand }, i) => {
        for (let k = 1; k <= demand; k++)
          if (amountOf(`y_${i}_${l}_${k}`) > 0.5) return [{ activity: id, minutes: k }];
        return [];
      }),
      reviews: [
        ...reviews.flatMap(({ id }, r) => (amountOf(`v_${r}_${l}`) > 0.5 ? [id] : [])),
        ...activities.flatMap(({ id }, i) =>
          amountOf(`v_${reviews.length + i}_${l}`) > 0.5 ? [`rev:${id}`] : [],
        ),
      ],
    }));
    return { lessons: planned, objective: evaluatePlan(problem, { lessons: planned }).objective };
  };
  return { lpFor, planFrom };
}

function negated(terms: Terms): [string, number][] {
  return [...terms].map(([name, by]) => [name, -by]);
}

/** `+ 3 x - 2 y`, in lines short enough for the LP format. */
function formatTerms(terms: Terms): string {
  const parts: string[] = [];
  let width = 0;
  for (const [name, by] of terms) {
    if (by === 0) continue;
    const part = `${by < 0 ? '-' : '+'} ${Math.abs(by)} ${name}`;
    width += part.length + 1;
    if (width > 200) {
      parts.push('\n ');
      width = part.length;
    }
    parts.push(part);
  }
  return parts.join(' ');
}
