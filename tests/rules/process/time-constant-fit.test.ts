import { describe, expect, test } from 'vitest';
import { partAfterStepC } from '#rules/process/heating.ts';
import { fitTimeConstant, type TrialRun } from '#rules/process/time-constant-fit.ts';

/** Uniform noise of -1 to 1, seeded (mulberry32). */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return 2 * (((t ^ (t >>> 14)) >>> 0) / 4294967296) - 1;
  };
}

/** A part entering air that climbs from 70 to 95 °C, logged every 2 s. */
function trial(tauS: number, spanS: number, noiseK: number, seed = 1): TrialRun {
  const random = noise(seed);
  const timesS = Array.from({ length: spanS / 2 + 1 }, (_, i) => 2 * i);
  const airC = timesS.map((t) => 95 - 25 * Math.exp(-t / 120));
  const partC = [22];
  for (let i = 1; i < timesS.length; i += 1)
    partC.push(partAfterStepC(partC[i - 1]!, airC[i - 1]!, airC[i]!, 2, tauS)!);
  return { timesS, airC, partC: partC.map((c, i) => (i === 0 ? c : c + noiseK * random())) };
}

const fitted = (run: TrialRun) => {
  const answer = fitTimeConstant(run);
  if (answer.kind === 'refused') throw new Error(answer.why);
  return answer;
};

describe('a run the model describes', () => {
  test.each([60, 240, 900])('gives %d s back without noise', (tauS) => {
    const found = fitted(trial(tauS, 2 * tauS, 0));
    expect(found.timeConstantS / tauS).toBeCloseTo(1, 5);
    expect(found.deviationK).toBeLessThan(1e-3);
    expect(found.doubts).toEqual([]);
  });
  test('two time constants with half a kelvin of noise: within a few percent, and it says so', () => {
    const found = fitted(trial(240, 480, 0.5));
    expect(Math.abs(found.timeConstantS / 240 - 1)).toBeLessThan(0.03);
    expect(found.uS / 240).toBeLessThan(0.03);
    expect(found.doubts).toEqual([]);
  });
  test('its uncertainty covers the truth as often as it claims: about 95 of 100 runs within two', () => {
    let covered = 0;
    for (let seed = 1; seed <= 100; seed += 1) {
      const found = fitted(trial(240, 480, 0.5, seed));
      if (Math.abs(found.timeConstantS - 240) <= 2 * found.uS) covered += 1;
    }
    expect(covered).toBeGreaterThanOrEqual(88);
    expect(covered).toBeLessThanOrEqual(100);
  });
});

test('deviations that drift slowly teach less than they seem to: it is as unsure as it should be', () => {
  let covered = 0;
  for (let seed = 1; seed <= 100; seed += 1) {
    const run = trial(240, 960, 0);
    const random = noise(1_000 + seed);
    let drift = 0;
    const partC = run.partC.map((c) => {
      drift = 0.9 * drift + 0.3 * random();
      return c + drift;
    });
    const found = fitted({ ...run, partC });
    if (Math.abs(found.timeConstantS - 240) <= 2 * found.uS) covered += 1;
  }
  expect(covered).toBeGreaterThanOrEqual(80);
});

describe('a run to doubt', () => {
  test('too short to tell', () =>
    expect(fitted(trial(1_800, 600, 0.1)).doubts).toEqual(['short-run']));
  test('a wet film holds the part at 45 °C for four minutes', () => {
    const run = trial(240, 960, 0);
    const partC = run.partC.map((c, i) => {
      const t = run.timesS[i]!;
      const before = c < 45;
      return before ? c : t < 400 ? 45 : run.partC[Math.max(0, i - 120)]!;
    });
    expect(fitted({ ...run, partC }).doubts).toContain('does-not-follow');
  });
});

describe('a run to refuse', () => {
  const run = trial(240, 480, 0.5);
  const cut = (count: number): TrialRun => ({
    timesS: run.timesS.slice(0, count),
    airC: run.airC.slice(0, count),
    partC: run.partC.slice(0, count),
  });
  test.each([
    ['seven readings', cut(7), 'too-few-readings'],
    ['a reading missing', { ...run, partC: run.partC.slice(1) }, 'readings-unusable'],
    [
      'one that is none',
      { ...run, partC: run.partC.map((c, i) => (i === 9 ? Number.NaN : c)) },
      'readings-unusable',
    ],
    [
      'times that stand',
      { ...run, timesS: run.timesS.map((t, i) => (i === 9 ? run.timesS[8]! : t)) },
      'readings-unusable',
    ],
    [
      'a part that never moves',
      { ...run, partC: run.partC.map(() => 22) },
      'no-time-constant-fits',
    ],
    ['a probe that reads air', { ...run, partC: [...run.airC] }, 'no-time-constant-fits'],
  ] as const)('%s', (_, bad, why) => {
    expect(fitTimeConstant(bad)).toEqual({ kind: 'refused', why });
  });
});
