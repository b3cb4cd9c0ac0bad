import { describe, expect, test } from 'vitest';
import { rise } from '#rules/kinds/rise.ts';
import { Alone, problemsOf } from './alone.ts';

const s = 1_000;
const min = 60 * s;
/** A coat heated no faster than 20 K a minute. */
const ramp = { up: '20 K', per: '1 min', window: '2 min', on_delay: '10 s' };
/** A filter that tears: its pressure drop falls while the flow goes on. */
const torn = { fall_share: '30 %', window: '10 min' };

function every(stepMs: number, fromMs: number, toMs: number, value: (ms: number) => number) {
  const readings: [number, number][] = [];
  for (let at = fromMs; at < toMs; at += stepMs) readings.push([at, value(at)]);
  return readings;
}

describe('settings', () => {
  test.each([
    [
      { window: '2 min' },
      [
        ': a change without a limit judges nothing | give at least one of up, down (with per) and fall_share',
      ],
    ],
    [
      { up: '2 K', window: '2 min' },
      [
        'per: nobody says in what time | give up or down, and per with the time they are meant in, as "1 min"',
      ],
    ],
    [
      { fall_share: '30 %', per: '1 min', window: '2 min' },
      [
        'per: it belongs to up or down | give up or down, and per with the time they are meant in, as "1 min"',
      ],
    ],
    [
      { down: '0 K', per: '1 min', window: '2 min' },
      ['down: every change would be too fast | make it more than nothing'],
    ],
    [
      { up: '2 K', per: '1 min', deadband: '2 K', window: '2 min' },
      ['deadband: no change up would be well again | make it less than up, 2'],
    ],
    [
      { fall_share: '100 %', window: '2 min' },
      [
        'fall_share: it is no part of a level | write it in per cent, over 0 and under 100, as "30 %"',
      ],
    ],
    [
      { fall_share: '3 K', window: '2 min' },
      [
        'fall_share: it is no part of a level | write it in per cent, over 0 and under 100, as "30 %"',
      ],
    ],
    [
      { ...ramp, min_span: '2 min' },
      [
        'min_span: the window never reaches back so far | make it shorter than the window, by a tenth at least',
      ],
    ],
  ])('%j', (written, problems) => {
    expect(problemsOf(rise, written)).toEqual(problems);
  });
  test('a window too short for its readings', () => {
    expect(problemsOf(rise, { ...ramp, window: '50 s' }, { expectEveryMs: 10 * s })).toEqual([
      'window: the window holds fewer than 6 readings | make it at least 60 s',
    ]);
  });
  test('a difference in another unit of temperature', () => {
    const rule = new Alone(rise, { up: '18 [degF]', per: '1 min', window: '2 min' });
    expect(rule.settings.up).toBeCloseTo(10, 9);
  });
});

describe('how fast', () => {
  test('a ramp too steep is told once it was seen for half the window and the delay was held', () => {
    const rule = new Alone(rise, ramp).see(...every(s, 0, 3 * min, (ms) => 20 + (30 * ms) / min));
    expect(rule.answers).toHaveLength(1);
    const at = Number(rule.answers[0]!.split(' ')[0]);
    // Half the window, the delay, a 32nd of the window to the end of a mean.
    expect(at).toBeGreaterThanOrEqual(70 * s);
    expect(at).toBeLessThanOrEqual(70 * s + (2 * 2 * min) / 32);
    expect(rule.evidence).toMatchObject({ side: 'high', allowed: 20, perMs: min });
    expect(rule.evidence.difference).toBeCloseTo(30, 6);
    expect(rule.evidence.slopePerH).toBeCloseTo(1_800, 6);
    expect(rule.sentence).toBe(
      '{$signal} at {$value}, rising {$difference} in {$per}; {$allowed} is allowed.',
    );
  });
  test('at the limit it is not past it, and the other way is free', () => {
    const at = new Alone(rise, ramp).see(...every(s, 0, 5 * min, (ms) => 20 + (20 * ms) / min));
    expect(at.answers).toEqual([]);
    const down = new Alone(rise, ramp).see(...every(s, 0, 5 * min, (ms) => 200 - (30 * ms) / min));
    expect(down.answers).toEqual([]);
  });
  test('down, or either', () => {
    const either = { up: '20 K', down: '10 K', per: '1 min', window: '2 min' };
    const rule = new Alone(rise, either).see(
      ...every(s, 0, 2 * min, (ms) => 200 - (12 * ms) / min),
    );
    expect(rule.severity).toBe(1);
    expect(rule.evidence).toMatchObject({ side: 'low', allowed: 10 });
    expect(rule.sentence).toBe(
      '{$signal} at {$value}, falling {$difference} in {$per}; {$allowed} is allowed.',
    );
  });
  test('once told, it is over only when less steep by the deadband', () => {
    const rule = new Alone(rise, { ...ramp, deadband: '5 K' });
    const value = (rate: number, from: number) => (ms: number) => 20 + (rate * (ms - from)) / min;
    rule.see(...every(s, 0, 3 * min, value(25, 0)));
    rule.see(...every(s, 3 * min, 9 * min, (ms) => 75 + value(17, 3 * min)(ms)));
    expect(rule.severity).toBe(1);
    rule.see(...every(s, 9 * min, 12 * min, (ms) => 177 + value(14, 9 * min)(ms)));
    expect(rule.severity).toBe(0);
  });
  test('neither one wild reading nor a step is a slope', () => {
    const wild = every(s, 0, 10 * min, (ms) => (ms === 5 * min ? 900 : 20));
    expect(new Alone(rise, ramp).see(...wild).answers).toEqual([]);
    const slow = { up: '2 K', per: '1 min', window: '2 min' };
    const step = every(s, 0, 10 * min, (ms) => (ms < 5 * min ? 20 : 23.9));
    expect(new Alone(rise, { ...slow, on_delay: '30 s' }).see(...step).answers).toEqual([]);
  });
  test('a sparse signal makes a mean of each reading, and six tell', () => {
    const rule = new Alone(rise, { up: '1 K', per: '1 h', window: '10 h' });
    rule.see(...every(60 * min, 0, 5 * 60 * min, (ms) => ms / (30 * min)));
    expect(rule.severity).toBe(0);
    rule.see([300 * min, 10]);
    expect(rule.severity).toBe(1);
  });
  test('what scatters about a steady level is no ramp', () => {
    let seed = 7;
    const noise = () => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed / 2_147_483_647 - 0.5;
    };
    const rule = new Alone(rise, ramp).see(...every(s, 0, 60 * min, () => 60 + 4 * noise()));
    expect(rule.answers).toEqual([]);
  });
});

describe('a fall by a share', () => {
  const drop = { unit: 'kPa', digits: 3 };
  const tears = (to: number) => (ms: number) => (ms < 20 * min ? 0.5 : to);
  test('a filter that tears is told, with what it was before; a loaded one is not', () => {
    const rule = new Alone(rise, torn, drop).see(...every(10 * s, 0, 26 * min, tears(0.3)));
    expect(rule.answers).toHaveLength(1);
    const at = Number(rule.answers[0]!.split(' ')[0]);
    expect(at).toBeGreaterThan(20 * min);
    expect(at).toBeLessThan(23 * min);
    expect(rule.evidence).toMatchObject({
      side: 'low',
      reference: 0.5,
      difference: 0.2,
      allowed: 0.15,
      perMs: 10 * min,
    });
    expect(rule.sentence).toBe(
      '{$signal} at {$value}: fell by {$difference} from {$reference} within {$per}; {$allowed} is allowed.',
    );
    const loads = every(10 * s, 0, 60 * min, (ms) => 0.2 + ms / (100 * min));
    expect(new Alone(rise, torn, drop).see(...loads).answers).toEqual([]);
  });
  test('a smaller fall, and a slow one, are not', () => {
    expect(
      new Alone(rise, torn, drop).see(...every(10 * s, 0, 60 * min, tears(0.36))).answers,
    ).toEqual([]);
    const slow = every(10 * s, 0, 100 * min, (ms) => 0.5 * Math.exp(-ms / (60 * min)));
    expect(new Alone(rise, torn, drop).see(...slow).answers).toEqual([]);
  });
  test('it goes with the window; an alarm that must stay latches', () => {
    const rule = new Alone(rise, torn, drop).see(...every(10 * s, 0, 40 * min, tears(0.3)));
    expect(rule.answers.map((answer) => answer.split(' ')[1])).toEqual(['1', '0']);
  });
  test('nothing falls by a share of nothing', () => {
    const below = every(10 * s, 0, 40 * min, (ms) => (ms < 20 * min ? 0 : -3));
    expect(new Alone(rise, torn, drop).see(...below).answers).toEqual([]);
  });
});

describe('what nobody saw', () => {
  test('no slope and no fall is drawn across a gap', () => {
    const both = { ...ramp, ...torn };
    const rule = new Alone(rise, both).see(...every(s, 0, 10 * min, () => 80));
    rule.gap(10 * min, 12 * min).see(...every(s, 12 * min, 30 * min, () => 30));
    expect(rule.answers).toEqual([]);
  });
  test('an answer stays over a gap until the window can tell again', () => {
    const rule = new Alone(rise, ramp).see(...every(s, 0, 2 * min, (ms) => 20 + (30 * ms) / min));
    rule.gap(2 * min, 3 * min).see(...every(s, 3 * min, 3 * min + 50 * s, () => 80));
    expect(rule.severity).toBe(1);
    rule.see(...every(s, 3 * min + 50 * s, 5 * min, () => 80));
    expect(rule.severity).toBe(0);
  });
  test('a clock set anew moves everything along; JSON loses nothing', () => {
    const value = (ms: number) => 20 + (30 * ms) / min;
    const whole = new Alone(rise, ramp).see(...every(s, 0, 65 * s, value)).shift(-10 * s);
    const parts = new Alone(rise, ramp).see(...every(s, 0, 65 * s, value)).shift(-10 * s);
    for (const [at, reading] of every(s, 65 * s, 90 * s, value)) {
      whole.see([at - 10 * s, reading]);
      parts.throughJson().see([at - 10 * s, reading]);
    }
    expect(parts.answers).toEqual(whole.answers);
    expect(parts.memory).toEqual(whole.memory);
    expect(whole.answers).toHaveLength(1);
  });
});
