/** Raw readings at the border: loop faults that must last, the cold junction as last heard of. */
import { describe, expect, test } from 'vitest';
import { compileSite } from '#rules/plan/compile.ts';
import { quality } from '#rules/signal/quality.ts';
import { SampleBatch } from '#rules/signal/sample.ts';
import { siteOf } from '../../rules/plan/site.ts';
import { rowsOf, scene, startMs } from './scene.ts';

const bindingsOf = (signals: string) => {
  const { bindings, problems } = compileSite(
    siteOf(`l: { s: { kind: custom, signals: { ${signals} } } }`),
    {},
    {},
    'r',
  );
  const own = problems.filter(({ path }) => path.includes('signals'));
  if (own.length > 0) throw new Error(JSON.stringify(own));
  return bindings;
};
const plain = 'payload: { kind: plain }';
const loop = `x: { topic: loop, ${plain}, unit: mA, sensor: { kind: current-loop, from: 0 bar, to: 16 bar }, resolution: 0.1 }`;
const at = (ms: number) => ({ nowMs: startMs + ms, beatMs: startMs + ms });

describe('a current loop', () => {
  const path: readonly (readonly [number, string, number, number])[] = [
    [0, '12', 800, quality.good],
    [1_000, '3.5', 0, quality.loopFaultUnsettled],
    [4_000, '3.5', 0, quality.loopFaultUnsettled],
    [5_000, '3.5', 0, quality.loopFaultLow],
    [6_000, '22', 0, quality.loopFaultHigh],
    [7_000, '3.7', -30, quality.loopSaturated],
    [8_000, '21.5', 0, quality.loopFaultUnsettled],
    [9_000, '4', 0, quality.good],
    [10_000, 'nonsense', 0, quality.undecodable],
    [11_000, '3.6', 0, quality.loopFaultUnsettled],
    [12_000, 'nonsense', 0, quality.undecodable],
    [15_000, '3.6', 0, quality.loopFaultLow],
  ];
  test('a fault counts once it has lasted 4 s, and is over with the first value', () => {
    const { send, intake } = scene(bindingsOf(loop));
    for (const [ms, text, value, code] of path)
      expect([ms, send(text, at(ms))]).toMatchObject([ms, [{ value, quality: code }]]);
    expect(intake.counters.causes).toMatchObject({ 'loop-fault': 7, 'loop-saturated': 1 });
  });
  test('what is remembered of the record goes on counting', () => {
    const bindings = bindingsOf(loop);
    for (let cut = 1; cut < path.length; cut += 1) {
      const before = scene(bindings);
      for (const [ms, text] of path.slice(0, cut)) before.send(text, at(ms));
      const after = scene(bindings);
      after.intake.remember(before.out);
      for (const [ms, text, value, code] of path.slice(cut))
        expect(after.send(text, at(ms))).toMatchObject([{ value, quality: code }]);
    }
  });
  test('a current named in another unit is converted, a pressure is the wrong unit', () => {
    const { send } = scene(
      bindingsOf(loop.replace(plain, 'payload: { kind: json, value: /v, unit: /u }')),
    );
    expect(send({ v: 0.012, u: 'A' })).toMatchObject([{ value: 800, quality: quality.good }]);
    expect(send({ v: 8, u: 'bar' })).toMatchObject([{ quality: quality.wrongUnit }]);
  });
  test('its calibration is in the unit of its ends', () => {
    const { send } = scene(
      bindingsOf(loop.replace('resolution', 'calibration: [[0, 0.1], [10, 10.1]], resolution')),
    );
    expect(send('12')).toMatchObject([{ value: 790 }]);
  });
});

const tc = (topic: string, payload = plain): string =>
  `x: { topic: ${topic}, ${payload}, unit: mV, sensor: { kind: thermocouple, type: K, cold_junction: cj }, resolution: 0.001 }`;

describe('a thermocouple', () => {
  const both = `${tc('tc')}, cj: { topic: cj, ${plain}, unit: Cel, expect_every: 10 s, range: [-20 Cel, 80 Cel] }`;
  test('beside a cold junction: missing, known, bad, stale', () => {
    const { send, intake } = scene(bindingsOf(both));
    const mv = (ms: number) => send('5', { ...at(ms), topic: 'tc' })[0];
    const cj = (text: string, ms: number) => send(text, { ...at(ms), topic: 'cj' });
    expect(mv(0)).toMatchObject({ value: 0, quality: quality.coldJunctionMissing });
    cj('25', 20);
    expect(mv(40)).toMatchObject({ value: 146.574, quality: quality.good });
    cj('26', 60);
    expect(mv(80)!.value).toBeGreaterThan(147);
    cj('300', 100);
    expect(mv(120)).toMatchObject({ quality: quality.coldJunctionMissing });
    cj('25', 140);
    expect(mv(30_140)).toMatchObject({ value: 146.574, quality: quality.good });
    expect(mv(30_160)).toMatchObject({ value: 146.574, quality: quality.coldJunctionStale });
    expect(intake.counters.causes).toMatchObject({
      'cold-junction-missing': 2,
      'cold-junction-stale': 1,
    });
  });
  test('an uncertain cold junction makes it uncertain', () => {
    const { send } = scene(bindingsOf(both));
    send('25', { topic: 'cj', retained: true });
    expect(send('5', { topic: 'tc' })).toMatchObject([{ quality: quality.uncertainInput }]);
  });
  test('a voltage no type K gives: broken', () => {
    const { send, intake } = scene(bindingsOf(both));
    send('25', { topic: 'cj' });
    expect(send('75', { topic: 'tc' })).toMatchObject([{ quality: quality.sensorBreak }]);
    expect(intake.counters.causes['sensor-break']).toBe(1);
  });
  test('one message with both: the cold junction is read first', () => {
    const json = (pointer: string): string => `payload: { kind: json, value: ${pointer} }`;
    const { send } = scene(
      bindingsOf(
        `${tc('card', json('/mv')).replace('x:', 'a-tc:')}, cj: { topic: card, ${json('/cj')}, unit: Cel }`,
      ),
    );
    // In the order of their names, a-tc would come first.
    expect(send({ mv: 5, cj: 25 }, { topic: 'card' })).toMatchObject([
      { signal: 1, value: 25 },
      { signal: 0, value: 146.574, quality: quality.good },
    ]);
  });
  test('instances of wildcards have each their own', () => {
    const wild = `x: { topic: "c/+/mv", names: [card], ${plain}, unit: mV, resolution: 0.001, sensor: { kind: thermocouple, type: K, cold_junction: cj } }, cj: { topic: "c/+/cj", names: [card], ${plain}, unit: Cel }`;
    let next = 0;
    const { send } = scene(bindingsOf(wild), { discover: () => next++ });
    const mv = (card: string) => send('5', { topic: `c/${card}/mv` })[0];
    send('25', { topic: 'c/one/cj' });
    expect(mv('one')).toMatchObject({ value: 146.574, quality: quality.good });
    expect(mv('two')).toMatchObject({ quality: quality.coldJunctionMissing });
    send('0', { topic: 'c/two/cj' });
    expect(mv('two')!.value).toBeCloseTo(121.99, 1);
    expect(mv('one')).toMatchObject({ value: 146.574 });
  });
  test('what is known of it outlives a new plan', () => {
    const bindings = bindingsOf(both);
    const { send, intake } = scene(bindings);
    send('25', { topic: 'cj' });
    intake.replan(bindings.toReversed());
    expect(send('5', { topic: 'tc' })).toMatchObject([{ value: 146.574 }]);
    send('30', { topic: 'cj' });
    expect(send('5', { topic: 'tc' })[0]!.value).toBeGreaterThan(150);
  });
});

describe('recorded values', () => {
  test('a raw one goes the same way; one in degrees was worked out before', () => {
    const { intake } = scene(bindingsOf(`${tc('tc')}, cj: { topic: cj, ${plain}, unit: Cel }`), {
      clock: 'samples',
    });
    const out = new SampleBatch(4);
    intake.takeValue(0, 25, null, quality.good, startMs, out);
    intake.takeValue(1, 5, null, quality.good, startMs, out);
    intake.takeValue(1, 5_000, 'uV', quality.good, startMs + 1, out);
    intake.takeValue(1, 300, '[degF]', quality.good, startMs + 2, out);
    intake.takeValue(1, 5, 'bar', quality.good, startMs + 3, out);
    expect(rowsOf(out).slice(1)).toMatchObject([
      { value: 146.574 },
      { value: 146.574 },
      { value: 148.889, quality: quality.good },
      { quality: quality.wrongUnit },
    ]);
  });
});

describe('a calibration', () => {
  const [first] = bindingsOf(`x: { topic: a, ${plain}, unit: Cel }`);
  const endMs = startMs + 1_000;
  const bindings = [{ ...first!, calibrationEndMs: endMs }];
  test('is overdue from its end on: uncertain, with its value', () => {
    const { send, intake } = scene(bindings);
    expect(send('21', at(980))).toMatchObject([{ value: 21, quality: quality.good }]);
    expect(send('21', at(1_000))).toMatchObject([
      { value: 21, quality: quality.calibrationOverdue },
    ]);
    expect(intake.counters.causes['calibration-overdue']).toBe(1);
  });
  test('says less than anything else that is wrong', () => {
    const { send } = scene(bindings);
    expect(send('21', { ...at(1_000), retained: true })).toMatchObject([
      { quality: quality.retained },
    ]);
    expect(send('nonsense', at(1_020))).toMatchObject([{ quality: quality.undecodable }]);
  });
});
