/** A drum in changing air, held to the drum in steady air and to a fine grid of its own radius. */
import { describe, expect, test } from 'vitest';
import {
  drumTerms,
  fadeTowards,
  meanOfC,
  timeToFloorS,
  wallOfC,
} from '#rules/process/drum-course.ts';
import { drum208L, timeToWallS, wallAfter } from '#rules/process/freezing.ts';

const transferWPerM2K = 8;
const terms = drumTerms(drum208L, transferWPerM2K)!;
const warmDrum = (celsius: number): number[] => terms.map(() => celsius);
const hourS = 3_600;

describe('in steady air', () => {
  test.each([1, 4.5, 13, 40])('after %d h it is the drum in steady air', (hours) => {
    const cold = { startC: 20, airC: 1, transferWPerM2K };
    const expected = wallAfter(drum208L, cold, hours * hourS);
    const drum = warmDrum(20);
    for (let h = 0; h < hours * 10; h += 1) fadeTowards(terms, drum, 1, hourS / 10);
    if ('refused' in expected) throw new Error(expected.refused);
    expect(Math.abs(wallOfC(terms, drum, 1) - expected.wallC!)).toBeLessThan(0.01);
    expect(Math.abs(meanOfC(terms, drum, 1) - expected.meanC!)).toBeLessThan(0.01);
  });
  test('time to the floor: 4.5 h from 20 °C in air of -10 °C to 5 °C (computed for a 208 L drum)', () => {
    const cold = { startC: 20, airC: -10, transferWPerM2K };
    const left = timeToFloorS(terms, warmDrum(20), -10, 5, 1e6)!;
    expect(Math.abs(left - (timeToWallS(drum208L, cold, 5) as number))).toBeLessThan(2);
    expect(Math.abs(left / hourS - 4.5)).toBeLessThan(0.2);
  });
});

/** Explicit differences on 200 rings, an independent way to the same wall. */
function onRings(air: (s: number) => number, startC: number, seconds: number): number {
  const { radiusM, densityKgPerM3, heatJPerKgK, conductivityWPerMK: k } = drum208L;
  const rings = 200;
  const dr = radiusM / rings;
  const alpha = k / (densityKgPerM3 * heatJPerKgK);
  const dt = (0.2 * dr * dr) / alpha;
  let t = new Float64Array(rings).fill(startC);
  let wall = startC;
  for (let s = 0; s < seconds; s += dt) {
    const next = new Float64Array(rings);
    const outside = transferWPerM2K / (1 + (transferWPerM2K * dr) / 2 / k);
    for (let i = 0; i < rings; i += 1) {
      const inner = i === 0 ? 0 : (k * i * dr * (t[i - 1]! - t[i]!)) / dr;
      const outer =
        i === rings - 1
          ? outside * radiusM * (air(s) - t[i]!)
          : (k * (i + 1) * dr * (t[i + 1]! - t[i]!)) / dr;
      const ring = (((i + 1) * dr) ** 2 - (i * dr) ** 2) / 2;
      next[i] = t[i]! + ((inner + outer) * dt) / (densityKgPerM3 * heatJPerKgK * ring);
    }
    t = next;
    wall = t[rings - 1]! + (outside * (air(s) - t[rings - 1]!) * dr) / 2 / k;
  }
  return wall;
}

test('in air that goes down and up it is what a fine grid gives', () => {
  const air = (s: number): number => (s < 6 * hourS ? -5 : s < 10 * hourS ? 15 : 2);
  const drum = warmDrum(18);
  for (let s = 0; s < 14 * hourS; s += 600) fadeTowards(terms, drum, air(s), 600);
  expect(Math.abs(wallOfC(terms, drum, 2) - onRings(air, 18, 14 * hourS))).toBeLessThan(0.15);
}, 30_000);

describe('the floor', () => {
  test('is not reached in air above it, and is reached at once below it', () => {
    expect(timeToFloorS(terms, warmDrum(20), 8, 5, 1e6)).toBe(1e6);
    expect(timeToFloorS(terms, warmDrum(4), 8, 5, 1e6)).toBe(0);
  });
  test('is told as never reached where no look ahead finds it, after any course of the air', () => {
    let [never, some] = [0, 0];
    for (let course = 0; course < 400; course += 1) {
      const drum = warmDrum(6 + (course % 23));
      for (let step = 0; step < 5; step += 1)
        fadeTowards(terms, drum, ((course * 37 + step * 53) % 71) / 2 - 12, 900 * (1 + step));
      const air = ((course * 29) % 41) / 2;
      const left = timeToFloorS(terms, drum, air, 5, 1e6)!;
      const at = [...drum];
      let reached = wallOfC(terms, at, air) <= 5;
      for (let s = 0; s < 1e6 && !reached; s += 300) {
        fadeTowards(terms, at, air, 300);
        reached = wallOfC(terms, at, air) <= 5;
      }
      expect(left < 1e6, `air ${air}, drum ${drum.join(' ')}`).toBe(reached);
      if (reached) some += 1;
      else never += 1;
    }
    expect(Math.min(never, some)).toBeGreaterThan(50);
  });
  test('below 0 °C nothing is told, nor of air beyond the range', () => {
    expect(timeToFloorS(terms, warmDrum(20), -10, -1, 1e6)).toBeNull();
    expect(timeToFloorS(terms, warmDrum(20), -80, 5, 1e6)).toBeNull();
    const drum = warmDrum(20);
    expect(fadeTowards(terms, drum, Number.NaN, 60)).toBe(false);
    expect(fadeTowards(terms, drum, 0, -1)).toBe(false);
    expect(drum).toEqual(warmDrum(20));
  });
  test('a drum that cannot be computed has no terms', () => {
    expect(drumTerms(drum208L, 1e9)).toBeNull();
    expect(drumTerms({ ...drum208L, densityKgPerM3: Number.NaN }, 8)).toBeNull();
  });
});
