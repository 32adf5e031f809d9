// Sources: Gelman et al., Bayesian Data Analysis, eqs 2.11-2.12; Berger 1985 ch. 4 (from memory); Searle et al. 1992.
// Every expected number is worked by hand in the comment above it.

import { expect, test } from 'vitest';
import { learnPace, type PaceObservation, studioPacePrior, updateLogPace } from '#planning';

test('[P1] Berger: N(100, 15²) and one result of 115 ± 10', () => {
  // precision 1/225 + 1/100 = 4/900 + 9/900 = 13/900; mean (4·100 + 9·115)/13 = 1435/13
  const posterior = updateLogPace({ mean: 100, sd: 15 }, [{ value: 115, weight: 1 }], 10);
  expect(posterior.mean).toBeCloseTo(110.39, 1);
  expect(posterior.mean).toBeCloseTo(1435 / 13, 10);
  expect(posterior.sd ** 2).toBeCloseTo(69.23, 2);
});

test('[P1] three activities that took 1.3 times as long', () => {
  // 1/τ₀² = 1/0.04 = 25; n/σ² = 3/0.09 = 33.333; precision 58.333; ln 1.3 = 0.262364
  // mean 33.333·0.262364/58.333 = 0.571429·0.262364 = 0.149922; sd 1/√58.333 = 0.130931; e^0.149922 = 1.161744
  const log: PaceObservation[] = [10, 20, 30].map((usual) => ({
    area: 'ear',
    actual: usual * 1.3,
    covered: usual,
    usual,
  }));
  const pace = learnPace(log, { mean: 0, between: 0.2, within: 0.3 });
  expect(pace.mean).toBeCloseTo(0.149922, 6);
  expect(pace.sd).toBeCloseTo(0.130931, 6);
  expect(Math.exp(pace.mean)).toBeCloseTo(1.161744, 5);
});

test('[P1] a prior mean that is not nought, and half an activity', () => {
  // prior N(0.1, 0.2²); one whole at ratio 2 (ln 2 = 0.693147), one half at ratio 1/2; σ = 0.3
  // precision 25 + (1 + 0.5)/0.09 = 25 + 16.666667 = 41.666667
  // sum 25·0.1 + 0.693147·11.111111 − 0.693147·5.555556 = 2.5 + 7.701635 − 3.850818 = 6.350818
  // mean 6.350818/41.666667 = 0.152420
  const pace = learnPace(
    [
      { area: 'ear', actual: 20, covered: 10, usual: 10 },
      { area: 'ear', actual: 5, covered: 10, usual: 20 },
    ],
    { mean: 0.1, between: 0.2, within: 0.3 },
  );
  expect(pace.mean).toBeCloseTo(0.15242, 5);
  expect(pace.sd).toBeCloseTo(Math.sqrt(0.024), 10);
});

test('[P4] an area shrinks towards the student', () => {
  // One activity, ratio e^0.3. Student: precision 25 + 11.111111 = 36.111111, mean 3.333333/36.111111 = 0.092308.
  // Area: prior N(0.092308, 0.1²), precision 100 + 11.111111 = 111.111111, mean (9.230769 + 3.333333)/111.111111 = 0.113077
  const pace = learnPace([{ area: 'reading', actual: 10 * Math.exp(0.3), covered: 10, usual: 10 }], {
    mean: 0,
    between: 0.2,
    within: 0.3,
  });
  expect(pace.mean).toBeCloseTo(0.092308, 6);
  expect(pace.byArea.get('reading')?.mean).toBeCloseTo(0.113077, 6);
});

test('[P5] variance components of a balanced table', () => {
  // Six students, six pieces each: log ratios mean ± 0.2, three of each, so 6·0.04/5 = 0.048 within each student.
  // Means −0.5, −0.3, −0.1, 0.1, 0.3, 0.5: grand mean 0, Σ squares 0.7; mean square between 6·0.7/5 = 0.84;
  // between = (0.84 − 0.048)/6 = 0.132
  const means = [-0.5, -0.3, -0.1, 0.1, 0.3, 0.5];
  const table = new Map(
    means.map((mean) => [
      `student ${mean}`,
      [0.2, -0.2, 0.2, -0.2, 0.2, -0.2].map(
        (d): PaceObservation => ({ area: 'ear', actual: 10 * Math.exp(mean + d), covered: 10, usual: 10 }),
      ),
    ]),
  );
  const prior = studioPacePrior(table);
  expect(prior.mean).toBeCloseTo(0, 10);
  expect(prior.within).toBeCloseTo(Math.sqrt(0.048), 10);
  expect(prior.between).toBeCloseTo(Math.sqrt(0.132), 10);
});
