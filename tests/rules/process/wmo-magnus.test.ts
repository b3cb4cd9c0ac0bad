import { expect, test } from 'vitest';
import { wmoRows } from '../../vectors/humidity.ts';
import { enhancementFactor, humidityFromMixingRatioPct } from './wmo-magnus.ts';

test(`humidity from a mixing ratio (${wmoRows.mixingRatio.source})`, () => {
  const row = wmoRows.mixingRatio;
  const found = humidityFromMixingRatioPct(row.hPa, row.temperatureC, row.ratio);
  expect(Math.abs(found / row.humidityPct - 1)).toBeLessThanOrEqual(row.toleranceShare);
});

test(`enhancement factor (${wmoRows.enhancement.source})`, () => {
  const row = wmoRows.enhancement;
  expect(Math.abs(enhancementFactor(row.hPa) / row.factor - 1)).toBeLessThanOrEqual(
    row.toleranceShare,
  );
});
