/** Raw sensors of the site file: what each becomes, and every way to write it wrong. */
import { describe, expect, test } from 'vitest';
import { type Sensor, sense, toleranceOf } from '#rules/plan/sensor.ts';
import { quality } from '#rules/signal/quality.ts';
import { compiled } from './site.ts';

const payload = 'payload: { kind: plain }';
const cabinet = `cabinet: { topic: c, ${payload}, unit: Cel, expect_every: 30 s }`;

function site(signal: string, more = '') {
  const found = compiled(`
l: { s: { kind: custom, signals: { x: { topic: a, ${payload}, ${signal} }${more === '' ? '' : `, ${more}`} } } }
`);
  return { ...found, x: found.bindings.find(({ id }) => id === 'l/s/x') };
}

describe('what a sensor becomes', () => {
  test('a thermocouple beside a fixed cold junction', () => {
    const { x, plan, problems } = site(
      'unit: mV, sensor: { kind: thermocouple, type: K, cold_junction: "77 [degF]", class: 1 }',
    );
    expect(problems).toEqual([]);
    expect(plan.signals[0]?.unit).toBe('Cel');
    expect(x?.unit.code).toBe('mV');
    expect(x?.sensor).toMatchObject({
      kind: 'thermocouple',
      type: 'K',
      coldJunction: { kind: 'fixed', temperatureC: 25 },
      grade: 1,
    });
  });
  test.each([
    [cabinet, 90_000],
    [`cabinet: { topic: c, ${payload}, unit: Cel }`, 600_000],
    [`cabinet: { topic: c, ${payload}, unit: Ohm, sensor: { kind: pt100 } }`, 600_000],
  ])('a thermocouple beside a signal: %s', (other, staleAfterMs) => {
    const { x, problems } = site(
      'unit: uV, sensor: { kind: thermocouple, type: T, cold_junction: cabinet }',
      other,
    );
    expect(problems).toEqual([]);
    expect(x?.sensor).toMatchObject({
      coldJunction: { kind: 'signal', id: 'l/s/cabinet', ofInstance: false, staleAfterMs },
    });
  });
  test('wildcards of the same names belong together', () => {
    const { bindings, problems } = compiled(`
l: { s: { kind: custom, signals: {
  x: { topic: "tc/+/mv", names: [card], ${payload}, unit: mV,
    sensor: { kind: thermocouple, type: J, cold_junction: cj } },
  cj: { topic: "tc/+/cj", names: [card], ${payload}, unit: Cel } } } }
`);
    expect(problems).toEqual([]);
    expect(bindings.find(({ id }) => id === 'l/s/x')?.sensor).toMatchObject({
      coldJunction: { id: 'l/s/cj', ofInstance: true },
    });
  });
  test('a Pt100 with two wires', () => {
    const { x, problems } = site(
      'unit: Ohm, sensor: { kind: pt100, wires: 2, lead_resistance: 800 mOhm, class: B }',
    );
    expect(problems).toEqual([]);
    expect(x?.sensor).toMatchObject({ kind: 'pt100', leadOhm: 0.8, grade: 'B' });
  });
  test('a loop is what its ends measure, in the canonical unit', () => {
    const { x, plan, problems } = site(
      'unit: mA, sensor: { kind: current-loop, from: 0 bar, to: 16 bar }, range: [-1 bar, 17 bar]',
    );
    expect(problems).toEqual([]);
    expect(plan.signals[0]?.unit).toBe('kPa');
    expect(x?.sensor).toMatchObject({ atZero: 0, atFull: 1_600 });
    expect([x?.low, x?.high]).toEqual([-100, 1_700]);
  });
  test('the range of a station leaves room for what a loop says beyond its ends', () => {
    const { bindings, problems } = compiled(`
l: { s: { kind: adhesive-store, signals: { wall: { topic: a, ${payload}, unit: mA,
  sensor: { kind: current-loop, from: -40 Cel, to: 60 Cel } } } } }
`);
    expect(problems).toEqual([]);
    const { low, high, sensor } = bindings[0]!;
    for (const ma of [3.61, 3.8, 20.5, 20.99]) {
      const { value } = sense(sensor!, ma, null);
      expect(value).toBeGreaterThanOrEqual(low);
      expect(value).toBeLessThanOrEqual(high);
    }
  });
});

describe('what is refused, with its place', () => {
  const tc = (coldJunction: string): string =>
    `unit: mV, sensor: { kind: thermocouple, type: K, cold_junction: ${coldJunction} }`;
  test.each([
    ['unit: Ohm, sensor: { kind: thermocouple, type: K, cold_junction: 25 Cel }', '', 'unit'],
    ['unit: mV, sensor: { kind: pt100 }', '', 'unit'],
    ['unit: Cel, sensor: { kind: current-loop, from: 0 bar, to: 1 bar }', '', 'unit'],
    [tc('cabinets'), cabinet, 'cold_junction'],
    [tc('"25"'), '', 'cold_junction'],
    [tc('25 bar'), '', 'cold_junction'],
    [tc('200 Cel'), '', 'cold_junction'],
    [tc('x'), '', 'cold_junction'],
    [tc('p'), `p: { topic: p, ${payload}, unit: bar }`, 'cold_junction'],
    [tc('h'), 'h: { by_hand: true, unit: Cel }', 'cold_junction'],
    [tc('w'), `w: { topic: "w/+", names: [card], ${payload}, unit: Cel }`, 'cold_junction'],
    ['unit: Ohm, sensor: { kind: pt100, wires: 2 }', '', 'wires'],
    ['unit: Ohm, sensor: { kind: pt100, lead_resistance: 1 mV }', '', 'lead_resistance'],
    ['unit: Ohm, sensor: { kind: pt100, lead_resistance: -1 Ohm }', '', 'lead_resistance'],
    ['unit: mA, sensor: { kind: current-loop, from: 0 bar, to: 1 m }', '', 'to'],
    ['unit: mA, sensor: { kind: current-loop, from: 1 bar, to: 100 kPa }', '', 'to'],
    ['unit: mA, sensor: { kind: current-loop, from: 0 wibble, to: 1 bar }', '', 'from'],
  ])('%s', (signal, more, place) => {
    const { problems } = site(signal, more);
    expect(problems.map(({ path }) => path.at(-1))).toEqual([place]);
    expect(problems[0]?.fix).toMatch(/^[A-Z].*[.?]$/);
  });
  test('a station that wants another quantity', () => {
    const { problems } = compiled(`
l: { s: { kind: adhesive-store, signals: { wall: { topic: a, ${payload}, unit: mA,
  sensor: { kind: current-loop, from: 0 bar, to: 1 bar } } } } }
`);
    expect(problems.map(({ path }) => path.at(-1))).toEqual(['sensor']);
    expect(problems[0]?.problem).toContain('it measures a pressure');
  });
  test('a hand reading has none', () => {
    const { problems } = compiled(
      'l: { s: { kind: custom, signals: { x: { by_hand: true, unit: Ohm, sensor: { kind: pt100 } } } } }',
    );
    expect(problems.map(({ path }) => path.at(-1))).toEqual(['sensor']);
  });
});

describe('what it makes of a reading', () => {
  const sensorOf = (signal: string): Sensor => site(signal).x!.sensor!;
  const pt100 = sensorOf('unit: Ohm, sensor: { kind: pt100, lead_resistance: 1 Ohm, class: B }');
  const loop = sensorOf('unit: mA, sensor: { kind: current-loop, from: 0 bar, to: 16 bar }');
  const tc = sensorOf('unit: mV, sensor: { kind: thermocouple, type: K, cold_junction: 0 Cel }');
  test.each([
    [pt100, 139.5055, 100, quality.good],
    [pt100, 1, 0, quality.sensorShort],
    [pt100, 9.9e37, 0, quality.sensorBreak],
    [loop, 12, 800, quality.good],
    [loop, 3.7, -30, quality.loopSaturated],
    [loop, 20.8, 1_680, quality.loopSaturated],
    [loop, 3.6, 0, quality.loopFaultUnsettled],
    [loop, 22, 0, quality.loopFaultUnsettled],
  ])('%o of %d', (sensor, sent, value, code) => {
    const found = sense(sensor, sent, null);
    expect(found.code).toBe(code);
    expect(found.value).toBeCloseTo(value, 6);
  });
  test.each([
    [5, { value: 25, code: quality.good }, 146.574, quality.good],
    [5, { value: 25, code: quality.coldJunctionStale }, 146.574, quality.coldJunctionStale],
    [5, { value: 25, code: quality.jump }, 146.574, quality.uncertainInput],
    [5, { value: 25, code: quality.outOfRange }, 0, quality.coldJunctionMissing],
    [5, { value: 180, code: quality.good }, 0, quality.coldJunctionMissing],
    [5, null, 0, quality.coldJunctionMissing],
    [70, { value: 25, code: quality.good }, 0, quality.sensorBreak],
    [-9, { value: 25, code: quality.good }, 0, quality.sensorBreak],
  ])('%d mV beside %o', (mv, known, value, code) => {
    const found = sense(tc, mv, known);
    expect(found.code).toBe(code);
    expect(found.value).toBeCloseTo(value, 2);
  });
  test('its tolerance, where its class is known', () => {
    expect(toleranceOf(pt100, 155)).toBeCloseTo(1.075, 9);
    expect(toleranceOf(tc, 155)).toBeNull();
    expect(toleranceOf(loop, 155)).toBeNull();
  });
});
