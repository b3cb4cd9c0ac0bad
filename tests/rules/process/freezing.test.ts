import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { endCooling, sideCooling } from '#rules/process/cooling-cylinder.ts';
import * as freezing from '#rules/process/freezing.ts';
import {
  type Container,
  drum208L,
  freightCheck,
  stirredTimeS,
  timeToWallS,
  wallAfter,
} from '#rules/process/freezing.ts';
import { drumRow, oneTermRows, stirredDrumRow, textbookCylinder } from '../../vectors/freezing.ts';

const cold = { startC: 20, airC: -10, transferWPerM2K: 8 };
const hours = (answer: ReturnType<typeof timeToWallS>): number => {
  if (typeof answer !== 'number') throw new Error(JSON.stringify(answer));
  return answer / 3_600;
};
const known = <Answer extends object>(
  answer: Answer,
): Exclude<Answer, { readonly refused: string }> => {
  if ('refused' in answer) throw new Error(String(answer.refused));
  return answer as Exclude<Answer, { readonly refused: string }>;
};

describe('the wall first', () => {
  test(`a drum in frost: wall and mean (${drumRow.source})`, () => {
    const { wallAt5H, wallAt0H, meanThenC, toleranceH } = drumRow;
    expect(Math.abs(hours(timeToWallS(drum208L, cold, 5)) - wallAt5H)).toBeLessThan(toleranceH);
    const frost = timeToWallS(drum208L, cold, 0);
    expect(Math.abs(hours(frost) - wallAt0H)).toBeLessThan(toleranceH);
    const then = known(wallAfter(drum208L, cold, hours(frost) * 3_600 - 60));
    expect(then.wallC!).toBeLessThan(0.05);
    expect(Math.abs(then.meanC! - meanThenC)).toBeLessThan(0.5);
  });

  test('trap: as one temperature the same drum would seem safe three times as long', () => {
    const { stirredTo5H, stirredTo0H, toleranceH } = drumRow;
    for (const [floor, expected] of [
      [5, stirredTo5H],
      [0, stirredTo0H],
    ] as const) {
      const found = known(stirredTimeS(drum208L, cold, floor, true));
      expect(Math.abs((found.seconds as number) / 3_600 - expected)).toBeLessThan(toleranceH);
      // Its Biot number is about 2: past the rule of 0.1, and said so.
      expect(found.biot).toBeGreaterThan(1.6);
      expect(found.biot).toBeLessThan(2.2);
      expect(found.uncertain).toBe(true);
    }
    expect(stirredTimeS(drum208L, cold, 5, false)).toEqual({ refused: 'unstirred' });
  });

  test(`stirred, all sides cooled (${stirredDrumRow.source})`, () => {
    const row = stirredDrumRow;
    const volumeM3 = Math.PI * row.radiusM ** 2 * row.heightM;
    const drum: Container = {
      radiusM: row.radiusM,
      heightM: row.heightM,
      densityKgPerM3: row.massKg / volumeM3,
      heatJPerKgK: row.heatJPerKgK,
      conductivityWPerMK: 0.6,
    };
    const found = known(stirredTimeS(drum, row, 0, true));
    expect(Math.abs((found.seconds as number) / 3_600 - row.to0H)).toBeLessThan(row.toleranceH);
    const tau = (found.seconds as number) / Math.log(3) / 3_600;
    expect(Math.abs(tau - row.timeConstantH)).toBeLessThan(row.toleranceH);
  });

  test(`a textbook cylinder, marked uncertain (${textbookCylinder.source})`, () => {
    const row = textbookCylinder;
    const found = known(stirredTimeS(row, row, row.targetC, true));
    expect(Math.abs((found.seconds as number) / 3_600 / row.hours - 1)).toBeLessThan(
      row.toleranceShare,
    );
    expect(found.biot).toBeCloseTo(row.biot, 3);
    expect(found.uncertain).toBe(true);
  });

  test('a small stirred pail is certain', () => {
    const pail = { ...drum208L, radiusM: 0.02, conductivityWPerMK: 1 };
    const found = known(stirredTimeS(pail, cold, 5, true));
    expect(found.biot).toBeLessThan(0.1);
    expect(found.uncertain).toBe(false);
  });

  test('ends that cool too make it sooner', () => {
    const standing = { ...drum208L, heightM: 0.85 };
    expect(hours(timeToWallS(standing, cold, 5))).toBeLessThan(
      hours(timeToWallS(drum208L, cold, 5)),
    );
    const after = known(wallAfter(standing, cold, 7_200));
    expect(after.meanC!).toBeLessThan(known(wallAfter(drum208L, cold, 7_200)).meanC!);
  });
});

describe('what is never told', () => {
  test('trap: no time to freeze through, no figure under 0 °C, no credit for a lowered freezing point', () => {
    expect(timeToWallS(drum208L, cold, -2)).toEqual({ refused: 'beyond-freezing' });
    expect(stirredTimeS(drum208L, cold, -2, true)).toEqual({ refused: 'beyond-freezing' });
    expect(known(wallAfter(drum208L, cold, 40 * 3_600)).wallC).toBeNull();
    expect(known(wallAfter(drum208L, cold, 400 * 3_600)).meanC).toBeNull();
    expect(
      Object.keys(freezing).filter((name) => /solid|through|depress|latent/i.test(name)),
    ).toEqual([]);
  });

  test('air that is no colder never gets there; a start at the floor is there', () => {
    expect(timeToWallS(drum208L, { ...cold, airC: 5 }, 5)).toBe('never');
    expect(timeToWallS(drum208L, { ...cold, airC: 12 }, 0)).toBe('never');
    expect(timeToWallS(drum208L, { ...cold, startC: 5 }, 5)).toBe(0);
    expect(known(stirredTimeS(drum208L, { ...cold, airC: 3 }, 2, true)).seconds).toBe('never');
    expect(known(stirredTimeS(drum208L, { ...cold, startC: 4 }, 5, true)).seconds).toBe(0);
  });

  test('outside the range', () => {
    for (const answer of [
      timeToWallS({ ...drum208L, radiusM: 3 }, cold, 5),
      timeToWallS(drum208L, { ...cold, transferWPerM2K: 0 }, 5),
      timeToWallS(drum208L, { ...cold, airC: Number.NaN }, 5),
      timeToWallS(drum208L, cold, Number.NaN),
      wallAfter(drum208L, cold, -1),
      stirredTimeS({ ...drum208L, densityKgPerM3: 10 }, cold, 5, true),
      freightCheck(drum208L, { ...way, forecastMinimaC: [] }),
      freightCheck(drum208L, { ...way, transitH: -1 }),
      freightCheck(drum208L, { ...way, forecastMinimaC: [Number.NaN] }),
    ]) {
      expect(answer).toEqual({ refused: 'out-of-range' });
    }
    expect(freightCheck(drum208L, { ...way, floorC: -1 })).toEqual({ refused: 'beyond-freezing' });
  });
});

const way = {
  startC: 20,
  forecastMinimaC: [-3, -10, 2],
  transitH: 4,
  transferWPerM2K: 8,
  floorC: 5,
};

describe('freight', () => {
  test('the coldest forecast all the way, the wall against its floor', () => {
    const short = known(freightCheck(drum208L, way));
    expect(short).toMatchObject({ coldestC: -10, mayGo: true });
    expect(short.wallAtArrivalC!).toBeGreaterThan(5);
    const long = known(freightCheck(drum208L, { ...way, transitH: 6 }));
    expect(long.mayGo).toBe(false);
    expect(long.wallAtArrivalC!).toBeLessThan(5);
    const days = known(freightCheck(drum208L, { ...way, transitH: 48 }));
    expect(days).toMatchObject({ mayGo: false, wallAtArrivalC: null });
    const mild = known(freightCheck(drum208L, { ...way, forecastMinimaC: [6, 8], transitH: 500 }));
    expect(mild).toMatchObject({ wallAtFloorAfterH: 'never', mayGo: true });
  });
});

describe('conduction itself', () => {
  test.each(oneTermRows)(
    '$shape at Bi $biot: first root $root ($source)',
    ({ shape, biot, root }) => {
      const cooling = (shape === 'side' ? sideCooling : endCooling)(biot)!;
      const decay = Math.log(cooling.wall(2) / cooling.wall(3));
      expect(Math.abs(Math.sqrt(decay) - root)).toBeLessThan(6e-5);
    },
  );

  test.each([
    { biot: 0.5, round: true },
    { biot: 4.16, round: true },
    { biot: 30, round: true },
    { biot: 4.16, round: false },
  ])('the same as stepping it out, Bi $biot, round $round', ({ biot, round }) => {
    const cooling = (round ? sideCooling : endCooling)(biot)!;
    for (const fourier of [0.01, 0.05, 0.3]) {
      const stepped = steppedOut(biot, fourier, round);
      expect(cooling.wall(fourier)).toBeCloseTo(stepped.wall, 2);
      expect(cooling.mean(fourier)).toBeCloseTo(stepped.mean, 3);
    }
  });

  test('from 1 downward, the wall ahead of the mean; nothing outside Bi 0.01 to 100', () => {
    const biots = fc.double({ min: 0.01, max: 100, noNaN: true });
    const times = fc.double({ min: 0, max: 3, noNaN: true });
    fc.assert(
      fc.property(biots, times, times, (biot, one, other) => {
        for (const cooling of [sideCooling(biot)!, endCooling(biot)!]) {
          const early = Math.min(one, other);
          const late = Math.max(one, other);
          expect(cooling.wall(early)).toBeGreaterThanOrEqual(cooling.wall(late) - 1e-12);
          expect(cooling.mean(early)).toBeGreaterThanOrEqual(cooling.mean(late) - 1e-12);
          expect(cooling.wall(early)).toBeLessThanOrEqual(cooling.mean(early) + 1e-6);
          expect(cooling.mean(early)).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 40 },
    );
    for (const biot of [0, 0.009, 101, Number.NaN]) {
      expect(sideCooling(biot)).toBeNull();
      expect(endCooling(biot)).toBeNull();
    }
  });
});

/** Explicit finite volumes, 200 shells or layers. */
function steppedOut(biot: number, fourier: number, round: boolean): ReturnType<typeof shares> {
  const cells = 200;
  const width = 1 / cells;
  const area = (r: number): number => (round ? r : 1);
  const volume = Array.from({ length: cells }, (_, i) => area((i + 0.5) * width) * width);
  const t = new Float64Array(cells).fill(1);
  const steps = Math.ceil(fourier / (0.4 * width * width));
  const step = fourier / steps;
  for (let k = 0; k < steps; k += 1) {
    let inflow = 0;
    for (let i = 0; i < cells; i += 1) {
      const last = i === cells - 1;
      const out = last
        ? (t[i]! * area(1)) / (width / 2 + 1 / biot)
        : ((t[i]! - t[i + 1]!) / width) * area((i + 1) * width);
      const change = ((inflow - out) * step) / volume[i]!;
      inflow = out;
      t[i]! += change;
    }
  }
  return shares(t, volume, biot, width);
}

function shares(
  t: Float64Array,
  volume: readonly number[],
  biot: number,
  width: number,
): { readonly wall: number; readonly mean: number } {
  const total = volume.reduce((sum, each) => sum + each, 0);
  const mean = t.reduce((sum, each, i) => sum + each * volume[i]!, 0) / total;
  // The half cell and the film in series: the wall lies between.
  const wall = t.at(-1)! / (1 + (biot * width) / 2);
  return { wall, mean };
}
