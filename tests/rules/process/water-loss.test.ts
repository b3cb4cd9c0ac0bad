import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type TankChange, waterLoss } from '#rules/process/water-loss.ts';

// 200 kg, 0.5 m2: from 25 to 27 % 14.8 kg of water have left, which is 29.7 mm.
const change: TankChange = {
  massKg: 200,
  surfaceM2: 0.5,
  beforePct: 25,
  afterPct: 27,
  uDifferencePct: 0.5,
  levelFell: { mm: 29, uMm: 2 },
};

test.each([
  ['solids and level agree', {}, 'agrees'],
  ['the level stands', { levelFell: { mm: 0, uMm: 2 } }, 'level-disagrees'],
  ['it fell by far more', { levelFell: { mm: 60, uMm: 2 } }, 'level-disagrees'],
  ['it rose', { levelFell: { mm: -20, uMm: 2 } }, 'level-disagrees'],
  ['a level as unsure as the fall', { levelFell: { mm: 29, uMm: 20 } }, 'level-disagrees'],
  ['nobody measured the level', { levelFell: null }, 'level-unknown'],
  ['solids within their uncertainty', { afterPct: 26 }, 'not-seen'],
  ['solids fell', { afterPct: 24 }, 'not-seen'],
  ['no solids', { afterPct: Number.NaN }, 'refused'],
  ['no tank', { massKg: 0 }, 'refused'],
  ['a level of no known uncertainty', { levelFell: { mm: 29, uMm: Number.NaN } }, 'refused'],
] as const)('%s: %s', (_, given, kind) => {
  expect(waterLoss({ ...change, ...given }).kind).toBe(kind);
});

test('how much, and how far the level should have fallen', () => {
  const found = waterLoss(change);
  if (found.kind !== 'agrees') throw new Error(found.kind);
  expect(found.lostKg).toBeCloseTo(14.815, 3);
  expect(found.expectedMm).toBeCloseTo(29.689, 3);
});

test('density alone never says that water was lost', () => {
  const pct = fc.double({ min: 2, max: 79, noNaN: true });
  fc.assert(
    fc.property(pct, pct, (beforePct, afterPct) => {
      const found = waterLoss({ ...change, beforePct, afterPct, levelFell: null });
      expect(['not-seen', 'level-unknown']).toContain(found.kind);
    }),
  );
});
