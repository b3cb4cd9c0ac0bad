/**
 * The plant against what must hold of any plant: heat is conserved, things run the way they must,
 * and the same seed gives the same line. Its numbers are invented, so none is held to a value.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceAt, driftAt, noiseAt } from '#agent/demo/chance.ts';
import { Drum } from '#agent/demo/drum.ts';
import { DryingOven } from '#agent/demo/drying-oven.ts';
import { nature, ovenPlant, storePlant } from '#agent/demo/invented-plant.ts';
import { afterStep, lagged } from '#agent/demo/lump.ts';
import { messages } from '#agent/demo/messages.ts';
import type { Moment } from '#agent/demo/moment.ts';
import { Plant, theShow } from '#agent/demo/plant.ts';
import { Rack } from '#agent/demo/rack.ts';
import { ResiduePlaces } from '#agent/demo/residue-places.ts';
import { StoreRoom, waterC } from '#agent/demo/store-room.ts';
import { type FaultName, faultNames, show, shown } from '#agent/demo/timetable.ts';

const at = Date.UTC(2026, 10, 25, 8);

function moment(faults: Partial<Record<FaultName, number>> = {}, lineS = 0): Moment {
  return {
    ...{ atMs: at, lineS, stepS: 1, seed: 1, outsideC: -11, hallC: 21, hallRhPercent: 46 },
    fault: (name) => faults[name] ?? 0,
    since: () => null,
    over: () => null,
  };
}

const temperature = fc.double({ min: -40, max: 200, noNaN: true });
const conductance = fc.double({ min: 0.1, max: 5_000, noNaN: true });
const step = fc.double({ min: 0.1, max: 100_000, noNaN: true });

describe('one body', () => {
  test('goes towards its balance and never past it', () => {
    fc.assert(
      fc.property(temperature, temperature, conductance, step, (now, around, wPerK, stepS) => {
        const then = afterStep(now, 10_000, 0, [[wPerK, around]], stepS);
        const slack = 1e-9 * (Math.abs(now) + Math.abs(around) + 1);
        expect(then).toBeGreaterThanOrEqual(Math.min(now, around) - slack);
        expect(then).toBeLessThanOrEqual(Math.max(now, around) + slack);
      }),
    );
  });
  test('two steps are one step twice as long', () => {
    fc.assert(
      fc.property(temperature, temperature, conductance, step, (now, around, wPerK, stepS) => {
        const neighbours = [[wPerK, around]] as const;
        const half = afterStep(now, 10_000, 300, neighbours, stepS);
        const twice = afterStep(half, 10_000, 300, neighbours, stepS);
        expect(twice).toBeCloseTo(afterStep(now, 10_000, 300, neighbours, 2 * stepS), 6);
      }),
    );
  });
  test('heat stored is heat in less heat out', () => {
    // Over a short step the mean of both ends is the temperature in between.
    const [before, stepS] = [40, 0.5];
    const then = afterStep(before, 8_000, 500, [[30, 20]], stepS);
    const outW = 30 * ((before + then) / 2 - 20);
    expect(8_000 * (then - before)).toBeCloseTo((500 - outW) * stepS, 3);
  });
  test('without neighbours all heat stays', () =>
    expect(afterStep(20, 4_000, 400, [], 10)).toBeCloseTo(21, 12));
  test('63 % of the way in one lag', () =>
    expect(lagged(0, 1, 30, 30)).toBeCloseTo(1 - Math.exp(-1), 12));
});

describe('water that freezes', () => {
  test('holds 0 Cel until its melting heat is gone, and never jumps', () => {
    expect(waterC(10 * nature.waterJPerKgK)).toBeCloseTo(10, 9);
    expect(waterC(-1)).toBe(0);
    expect(waterC(-nature.meltingJPerKg + 1)).toBe(0);
    expect(waterC(-nature.meltingJPerKg - nature.iceJPerKgK)).toBeCloseTo(-1, 9);
  });
  test('colder with less heat, always', () => {
    const heat = fc.double({ min: -6e5, max: 1e5, noNaN: true });
    fc.assert(fc.property(heat, heat, (a, b) => waterC(Math.min(a, b)) <= waterC(Math.max(a, b))));
  });
});

describe('the store', () => {
  const roomAfter = (faults: Partial<Record<FaultName, number>>, seconds: number): StoreRoom => {
    const store = new StoreRoom();
    for (let s = 0; s < seconds; s += 1) store.step(moment(faults));
    return store;
  };
  test('holds its set point in the frost', () =>
    expect(roomAfter({}, 36_000).airC).toBeGreaterThan(storePlant.setC - 3));
  test('the wall follows the air, later, through an open gate', () => {
    const { airC, wallC } = roomAfter({ 'gate-open': 1 }, 300);
    expect(airC).toBeLessThan(wallC);
    expect(roomAfter({ 'gate-open': 1 }, 1_200).wallC).toBeLessThan(wallC);
  });
  test('by hand it stops at the cut-out', () =>
    expect(roomAfter({ 'store-heater-full': 1 }, 7_200).airC).toBeCloseTo(storePlant.cutOutC, 0));
});

describe('a rack in the oven', () => {
  function dried(airC: number, seconds: number) {
    const rack = new Rack();
    rack.load(21);
    let heatJPerM2 = 0;
    let vapourJPerM2 = 0;
    const startC = rack.metalC;
    for (let s = 0; s < seconds; s += 1) {
      heatJPerM2 += ovenPlant.filmWPerM2K * (airC - rack.metalC);
      rack.step(airC, ovenPlant.filmWPerM2K, 1);
      vapourJPerM2 += nature.evaporationJPerKg * rack.dryingKgPerM2S;
    }
    const storedJPerM2 = nature.steelJPerM3K * ovenPlant.metalM * (rack.metalC - startC);
    return { rack, heatJPerM2, vapourJPerM2, storedJPerM2 };
  }
  test('heat from the air is heat in the metal and in the vapour', () => {
    for (const airC of [50, 65, 78, 100]) {
      const { heatJPerM2, vapourJPerM2, storedJPerM2 } = dried(airC, 900);
      expect(storedJPerM2 + vapourJPerM2).toBeCloseTo(heatJPerM2, 3);
    }
  });
  test('all its water leaves and none comes out of nothing', () => {
    const { rack, vapourJPerM2 } = dried(78, 3_600);
    expect(rack.waterKgPerM2).toBeCloseTo(0, 9);
    expect(vapourJPerM2).toBeCloseTo(ovenPlant.waterKgPerM2 * nature.evaporationJPerKg, 3);
  });
  test('it never gets hotter than the air, and hotter air dries sooner', () => {
    expect(dried(78, 7_200).rack.metalC).toBeLessThanOrEqual(78);
    expect(dried(90, 300).rack.waterKgPerM2).toBeLessThan(dried(70, 300).rack.waterKgPerM2);
  });
  test('a wet film holds the metal back', () => {
    const dry = new Rack();
    dry.load(21);
    dry.waterKgPerM2 = 0;
    for (let s = 0; s < 300; s += 1) dry.step(78, ovenPlant.filmWPerM2K, 1);
    expect(dried(78, 300).rack.metalC).toBeLessThan(dry.metalC);
  });
});

describe('the oven', () => {
  function run(faults: Partial<Record<FaultName, number>>, seconds: number, loads = true) {
    const oven = new DryingOven();
    let heatJ = 0;
    for (let s = 0; s < seconds; s += 1) {
      oven.step(moment(faults, loads ? s : ovenPlant.dwellS + (s % 10)));
      heatJ += oven.heatW;
    }
    return { oven, heatJ };
  }
  test('empty and steady, its burners give what walls and exhaust take', () => {
    const { oven } = run({}, 7_200, false);
    const exhaustWPerK = ovenPlant.exhaustM3PerS * nature.airJPerM3K;
    const lostW = oven.zoneC.reduce(
      (sum, zoneC) => sum + (ovenPlant.wallsWPerK + exhaustWPerK) * (zoneC - 21),
      0,
    );
    expect(oven.heatW / lostW).toBeCloseTo(1, 3);
  });
  test('racks cost heat, a lost exhaust saves it', () => {
    expect(run({}, 7_200).heatJ).toBeGreaterThan(run({}, 7_200, false).heatJ);
    expect(run({ 'oven-exhaust-lost': 1 }, 7_200).heatJ).toBeLessThan(run({}, 7_200).heatJ);
  });
  test('over a standing conveyor nothing enters or leaves', () => {
    expect(run({ 'conveyor-stops': 1 }, 4_000).oven.loaded).toBe(0);
    const oven = new DryingOven();
    for (let s = 0; s < 4_000; s += 1) oven.step(moment(s > 500 ? { 'conveyor-stops': 1 } : {}, s));
    expect(oven.loaded).toBe(1);
  });
});

test('residue that reacts is hotter than the air beside it; residue that does not, hardly', () => {
  const places = new ResiduePlaces();
  for (let s = 0; s < 1_200; s += 1) places.step(moment(), [78, 78], 69);
  expect(Math.abs(places.filterC - 69)).toBeLessThan(1);
  for (let s = 0; s < 540; s += 1) places.step(moment({ 'filter-reacts': 1 }), [78, 78], 69);
  expect(places.filterC - 69).toBeGreaterThan(5);
  expect(places.floorC - places.floorAirC).toBeLessThan(5);
});

test('a drum falls as it is drawn, and is full after a change', () => {
  const drum = new Drum();
  let before = drum.levelMm;
  let changes = 0;
  for (let s = 0; s < 200_000; s += 1) {
    drum.step(moment({}, s));
    if (drum.levelMm > before) {
      changes += 1;
      expect(drum.inUse).toBe(0);
    }
    before = drum.levelMm;
  }
  expect(changes).toBeGreaterThan(3);
});

describe('chance', () => {
  const seed = fc.integer({ min: 0, max: 0x7fffffff });
  const place = fc.integer({ min: -1_000_000, max: 1_000_000 });
  test('the same question has the same answer, within its bounds', () => {
    fc.assert(
      fc.property(seed, fc.nat(5_000), place, (s, channel, n) => {
        expect(chanceAt(s, channel, n)).toBe(chanceAt(s, channel, n));
        expect(chanceAt(s, channel, n)).toBeGreaterThanOrEqual(0);
        expect(chanceAt(s, channel, n)).toBeLessThan(1);
        expect(Math.abs(noiseAt(s, channel, n))).toBeLessThanOrEqual(2 * Math.sqrt(3));
        expect(Math.abs(driftAt(s, channel, n, 600))).toBeLessThanOrEqual(1);
      }),
    );
  });
  test('noise has mean 0 and deviation 1', () => {
    const values = Array.from({ length: 40_000 }, (_, n) => noiseAt(7, 3, n));
    const mean = values.reduce((a, b) => a + b) / values.length;
    const variance = values.reduce((a, b) => a + (b - mean) ** 2, 0) / values.length;
    // Five standard errors of 40,000 draws: 5 / 200.
    expect(Math.abs(mean)).toBeLessThan(0.025);
    expect(Math.abs(variance - 1)).toBeLessThan(0.05);
  });
  test('a drift does not jump', () => {
    for (let s = -5_000; s < 5_000; s += 1)
      expect(Math.abs(driftAt(1, 2, s + 1, 600) - driftAt(1, 2, s, 600))).toBeLessThan(0.01);
  });
});

describe('the line', () => {
  const said = (seed: number, until: number): string[] => {
    const plant = new Plant(seed, at, -1_800, theShow(seed));
    const now = plant.moveTo(at + until * 1_000);
    return messages.map(({ payload }, index) => payload(plant, now, index) ?? 'nothing');
  };
  test('follows from seed and moment alone, however it got there', () => {
    const plant = new Plant(3, at, -1_800, theShow(3));
    for (let s = -1_799; s <= 900; s += 7) plant.moveTo(at + s * 1_000);
    const now = plant.moveTo(at + 900_000);
    const inSteps = messages.map(({ payload }, index) => payload(plant, now, index) ?? 'nothing');
    expect(inSteps).toEqual(said(3, 900));
    expect(said(4, 900)).not.toEqual(said(3, 900));
  });
  test('every fault is on the timetable once, and fits an hour', () => {
    expect(show.map(({ name }) => name).sort()).toEqual([...faultNames].sort());
    for (const { lengthMin } of show) expect(lengthMin).toBeLessThan(35);
  });
  test('every fault comes in each of the first ten hours, at most a minute off', () => {
    for (const [index, fault] of show.entries())
      for (let cycle = 0; cycle < 10; cycle += 1) {
        const middleS = (cycle * 60 + fault.fromMin + fault.lengthMin / 2) * 60;
        const near = [-30, 0, 30].map((off) => shown(5, fault, index, middleS + off));
        expect(Math.max(...near), `${fault.name} in hour ${cycle}`).toBeGreaterThan(0.9);
      }
  });
});
