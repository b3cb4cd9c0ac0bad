import fc from 'fast-check';
import { expect, test } from 'vitest';
import { loopBand, loopFaultMs, loopValue } from '#rules/process/current-loop.ts';
import { bandRows, faultScaleRows, persistence, scaleRows } from '../../vectors/current-loop.ts';

test.each(bandRows)('$currentMa mA: $band ($flag: $source)', ({ currentMa, band }) =>
  expect(loopBand(currentMa)).toBe(band),
);
test.each(scaleRows)('$currentMa mA: $percent % ($flag: $source)', ({ currentMa, percent }) =>
  expect(loopValue(currentMa, 0, 100)).toBeCloseTo(percent, 9),
);
test.each(faultScaleRows)(
  '$currentMa mA would be $percent % and is no value ($flag: $source)',
  ({ currentMa, percent }) => {
    expect(loopValue(currentMa, 0, 100)).toBeNull();
    const just = currentMa < 12 ? 1e-9 : -1e-9;
    expect(loopValue(currentMa + just, 0, 100)).toBeCloseTo(percent, 6);
  },
);
test(`a fault counts after ${persistence.ms} ms (${persistence.flag}: ${persistence.source})`, () =>
  expect(loopFaultMs).toBe(persistence.ms));

test('a loop may run the other way', () => expect(loopValue(8, 100, 0)).toBe(75));
test('a current that is no number is in no band and has no value', () => {
  expect(loopBand(Number.NaN)).toBeNull();
  expect(loopValue(Number.NaN, 0, 1)).toBeNull();
});
test('every current has a band; only those between the faults have a value', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, min: -100, max: 100 }), (current) => {
      const fault = loopBand(current)!.startsWith('fault');
      expect(loopValue(current, -40, 150) === null).toBe(fault);
    }),
  );
});
