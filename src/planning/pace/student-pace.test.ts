import { expect, test } from 'vitest';
import { defaultPacePrior } from '../course/default-settings.ts';
import { learnPace, logRatioOf, mostLogRatio, type PaceObservation, paceIn } from './student-pace.ts';
import { studioPacePrior } from './studio-pace-prior.ts';

const prior = { mean: 0, between: 0.2, within: 0.3 };
const work = (actual: number, covered: number, usual = covered, area: PaceObservation['area'] = 'ear') => ({
  area,
  actual,
  covered,
  usual,
});

test('[P1] nothing logged: the prior stands, and the pace is as usual', () => {
  const pace = learnPace([], prior);
  expect(pace).toMatchObject({ mean: 0, sd: 0.2, observations: 0, capped: 0 });
  expect(paceIn(pace, 'ear')).toBe(1);
});

test('[P1] more of the same draws the belief nearer and makes it surer', () => {
  const means = [1, 3, 10, 100].map((n) => learnPace(Array(n).fill(work(30, 20)), prior));
  const target = Math.log(1.5);
  means.reduce((before, now) => {
    expect(Math.abs(target - now.mean)).toBeLessThan(Math.abs(target - before.mean));
    expect(now.sd).toBeLessThan(before.sd);
    return now;
  });
});

test('[P2] a part counts as that part; two halves count as one whole', () => {
  const whole = learnPace([work(30, 20)], prior);
  const halves = learnPace([work(15, 10, 20), work(15, 10, 20)], prior);
  expect(halves.mean).toBeCloseTo(whole.mean, 12);
  expect(halves.sd).toBeCloseTo(whole.sd, 12);
  expect(halves.observations).toBe(2);
});

test('[P2] nothing covered, or no time spent, says nothing', () => {
  expect(learnPace([work(10, 0, 20), work(0, 10, 20)], prior)).toMatchObject({ mean: 0, observations: 0 });
});

test('[P3] an absurd ratio is capped, and that is told', () => {
  expect(logRatioOf(work(600, 10))).toMatchObject({ value: mostLogRatio, capped: true });
  expect(logRatioOf(work(1, 20))).toMatchObject({ value: -mostLogRatio, capped: true });
  expect(logRatioOf(work(30, 10))).toMatchObject({ capped: false });
  expect(learnPace([work(600, 10), work(10, 10)], prior).capped).toBe(1);
});

test('[P4] an area has its own pace, shrunk towards the student', () => {
  const pace = learnPace(
    [
      work(20, 10, 10, 'reading'),
      work(20, 10, 10, 'reading'),
      work(10, 10, 10, 'ear'),
      work(10, 10, 10, 'ear'),
    ],
    prior,
  );
  expect(paceIn(pace, 'reading')).toBeGreaterThan(paceIn(pace, 'repertoire'));
  expect(paceIn(pace, 'ear')).toBeLessThan(paceIn(pace, 'repertoire'));
  expect(paceIn(pace, 'reading')).toBeLessThan(2);
  expect(paceIn(pace, 'ear')).toBeGreaterThan(1);
});

test('[P5] too little said: the defaults stand', () => {
  expect(studioPacePrior(new Map())).toBe(defaultPacePrior);
  const few = new Map(Array.from({ length: 4 }, (_, i) => [`s${i}`, Array(20).fill(work(12, 10))]));
  expect(studioPacePrior(few)).toBe(defaultPacePrior);
  const small = new Map(Array.from({ length: 9 }, (_, i) => [`s${i}`, Array(3).fill(work(12, 10))]));
  expect(studioPacePrior(small)).toBe(defaultPacePrior);
  const parts = new Map(Array.from({ length: 9 }, (_, i) => [`s${i}`, Array(9).fill(work(3, 3, 10))]));
  expect(studioPacePrior(parts)).toBe(defaultPacePrior);
});

test('[P5] no spread at all is still told as some', () => {
  const same = new Map(Array.from({ length: 6 }, (_, i) => [`s${i}`, Array(6).fill(work(12, 10))]));
  const learnt = studioPacePrior(same);
  expect(learnt.mean).toBeCloseTo(Math.log(1.2), 12);
  expect(learnt).toMatchObject({ between: 0.05, within: 0.1 });
});
