import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  thermocoupleApproximateC,
  thermocoupleC,
  thermocoupleFromTerminalsC,
  thermocoupleMv,
  thermocoupleToleranceK,
} from '#rules/process/thermocouple.ts';
import { thermocoupleTypes } from '#rules/process/thermocouple-coefficients.ts';
import {
  approximateRows,
  coldJunction,
  errorBandRows,
  toleranceRows,
  voltageRows,
} from '../../vectors/thermocouple.ts';

test.each(voltageRows)(
  'type $type at $temperatureC °C: $mv mV ($flag: $source)',
  ({ type, temperatureC, mv, toleranceMv }) => {
    expect(Math.abs(thermocoupleMv(type, temperatureC)! - mv)).toBeLessThanOrEqual(toleranceMv);
  },
);

test.each(voltageRows.filter(({ temperatureC }) => temperatureC >= -200))(
  'type $type, $mv mV: $temperatureC °C ($flag: $source)',
  ({ type, temperatureC, mv, toleranceMv }) => {
    const perMv =
      0.01 / (thermocoupleMv(type, temperatureC)! - thermocoupleMv(type, temperatureC - 0.01)!);
    const found = thermocoupleC(type, mv)!;
    expect(Math.abs(found - temperatureC)).toBeLessThanOrEqual(1.01 * toleranceMv * perMv);
  },
);

test.each(approximateRows)(
  'approximate inverse of type $type at $temperatureC °C: $approximateC ($flag: $source)',
  ({ type, temperatureC, approximateC }) => {
    const found = thermocoupleApproximateC(type, thermocoupleMv(type, temperatureC)!)!;
    expect(Math.abs(found - approximateC)).toBeLessThanOrEqual(5.1e-5);
  },
);

test.each(errorBandRows)(
  'approximate inverse of type $type, $fromC to $toC °C, strays $leastK to $mostK ($flag: $source)',
  ({ type, fromC, toC, leastK, mostK }) => {
    // Printed to 0.01 °C: so much more may hide behind the rounding.
    for (let t = fromC + 0.5; t < toC; t += 0.5) {
      const strays = thermocoupleApproximateC(type, thermocoupleMv(type, t)!)! - t;
      expect(strays).toBeGreaterThanOrEqual(leastK - 0.005);
      expect(strays).toBeLessThanOrEqual(mostK + 0.005);
    }
  },
);

test('trap: the cold junction is added as a voltage; as degrees it is 0.38 K wrong', () => {
  const { type, mv, coldJunctionC, temperatureC, addedAsDegreesC, toleranceC } = coldJunction;
  const found = thermocoupleFromTerminalsC(type, mv, coldJunctionC)!;
  expect(Math.abs(found - temperatureC)).toBeLessThanOrEqual(toleranceC);
  const naive = thermocoupleC(type, mv)! + coldJunctionC;
  expect(Math.abs(naive - addedAsDegreesC)).toBeLessThanOrEqual(toleranceC);
  expect(naive - found).toBeCloseTo(0.38, 2);
});

test.each(toleranceRows)(
  'type $type class $grade at $temperatureC °C: ± $toleranceK K ($flag: $source)',
  ({ type, grade, temperatureC, toleranceK }) => {
    expect(thermocoupleToleranceK(type, grade, temperatureC)).toBeCloseTo(toleranceK, 9);
  },
);

const ranges = { K: [-200, 1372], J: [-210, 1200], T: [-200, 400] } as const;

describe.each(thermocoupleTypes)('type %s everywhere', (type) => {
  const [least, most] = ranges[type];
  const temperature = fc.double({ min: least, max: most, noNaN: true });
  test('there and back within 1e-6 °C', () => {
    fc.assert(
      fc.property(temperature, (t) => {
        expect(Math.abs(thermocoupleC(type, thermocoupleMv(type, t)!)! - t)).toBeLessThan(1e-6);
      }),
    );
  });
  test('at terminals of the same temperature there is no voltage', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 150, noNaN: true }), (t) => {
        expect(Math.abs(thermocoupleFromTerminalsC(type, 0, t)! - t)).toBeLessThan(1e-6);
      }),
    );
  });
  test('every double is a number in range or nothing, never NaN', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), (x, y) => {
        for (const found of [
          thermocoupleMv(type, x),
          thermocoupleC(type, x),
          thermocoupleApproximateC(type, x),
          thermocoupleFromTerminalsC(type, x, y),
          thermocoupleToleranceK(type, 1, x),
        ])
          if (found !== null) expect(found).toSatisfy(Number.isFinite);
      }),
    );
  });
  test('nothing beyond the ends', () => {
    expect(thermocoupleMv(type, most + 0.1)).toBeNull();
    expect(thermocoupleMv(type, -270.1)).toBeNull();
    expect(thermocoupleC(type, thermocoupleMv(type, most)! + 0.01)).toBeNull();
    expect(thermocoupleC(type, thermocoupleMv(type, least)! - 0.01)).toBeNull();
    expect(thermocoupleFromTerminalsC(type, 1, -40.1)).toBeNull();
    expect(thermocoupleFromTerminalsC(type, 1, 150.1)).toBeNull();
    expect(thermocoupleToleranceK(type, 2, -40.1)).toBeNull();
  });
});
