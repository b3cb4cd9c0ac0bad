import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type DipFit,
  filmAtSpeed,
  fitDipFilm,
  type Panel,
  speedForFilmMPerMin,
} from '#rules/process/dip-fit.ts';
import { panelFit } from '../../vectors/dip-film.ts';

const panels: readonly Panel[] = panelFit.panels.map(([withdrawalMPerMin, filmUm]) => ({
  withdrawalMPerMin,
  filmUm,
}));
const fitted = (of: readonly Panel[]): DipFit => {
  const answer = fitDipFilm(of);
  if (answer.kind === 'refused') throw new Error(answer.why);
  return answer.fit;
};

describe(`six panels (${panelFit.flag}: ${panelFit.source})`, () => {
  const fit = fitted(panels);
  test('the line', () => {
    expect(fit.n).toBeCloseTo(panelFit.n, 10);
    expect(fit.nU).toBeCloseTo(panelFit.nU, 10);
    expect(fit.kUm).toBeCloseTo(panelFit.kUm, 9);
    expect(fit.scatterShare).toBeCloseTo(panelFit.scatterShare, 10);
  });
  test('the next panel', () => {
    const found = filmAtSpeed(fit, panelFit.atMPerMin)!;
    expect(found.filmUm).toBeCloseTo(panelFit.filmUm, 8);
    expect(found.leastUm).toBeCloseTo(panelFit.leastUm, 6);
    expect(found.mostUm).toBeCloseTo(panelFit.mostUm, 6);
    expect(found.uncertain).toBe(false);
  });
  test('beyond the speeds tried it is uncertain, and wider', () => {
    const far = filmAtSpeed(fit, 3)!;
    expect(far.uncertain).toBe(true);
    expect(far.mostUm / far.filmUm).toBeGreaterThan(panelFit.mostUm / panelFit.filmUm);
    expect(filmAtSpeed(fit, 0.4)!.uncertain).toBe(true);
  });
  test('a speed for a film, and none that was not tried', () => {
    expect(speedForFilmMPerMin(fit, panelFit.filmUm)!).toBeCloseTo(panelFit.atMPerMin, 8);
    expect(speedForFilmMPerMin(fit, 60)).toBeNull();
    expect(speedForFilmMPerMin(fit, Number.NaN)).toBeNull();
  });
});

describe('panels to refuse', () => {
  test.each([
    ['three', panels.slice(0, 3), 'too-few-panels'],
    ['one that is none', [...panels, { withdrawalMPerMin: 1, filmUm: Number.NaN }], 'out-of-range'],
    ['one at no speed', [...panels, { withdrawalMPerMin: 0, filmUm: 10 }], 'out-of-range'],
    [
      'all at one speed',
      panels.map((panel) => ({ ...panel, withdrawalMPerMin: 1 })),
      'speeds-too-alike',
    ],
    [
      'thinner when faster',
      panels.map((panel) => ({ ...panel, filmUm: 300 / panel.filmUm })),
      'not-a-dip-film',
    ],
  ] as const)('%s: %s', (_, of, why) => expect(fitDipFilm(of)).toEqual({ kind: 'refused', why }));
});

test('a law without scatter comes back, with an interval of no width', () => {
  const k = fc.double({ min: 5, max: 100, noNaN: true });
  const n = fc.double({ min: 0.3, max: 1, noNaN: true });
  fc.assert(
    fc.property(k, n, (kUm, exponent) => {
      const of = [0.5, 0.8, 1, 1.5, 2].map((u) => ({
        withdrawalMPerMin: u,
        filmUm: kUm * u ** exponent,
      }));
      const fit = fitted(of);
      expect(fit.n).toBeCloseTo(exponent, 9);
      expect(fit.kUm / kUm).toBeCloseTo(1, 9);
      const found = filmAtSpeed(fit, 1.2)!;
      expect(found.mostUm - found.leastUm).toBeLessThan(1e-6 * kUm);
      expect(speedForFilmMPerMin(fit, found.filmUm)!).toBeCloseTo(1.2, 9);
    }),
  );
});
