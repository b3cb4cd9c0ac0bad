/** A mixer by the size of its containers: how long a new one is mixed, and whose speeds hold. */
import { describe, expect, test } from 'vitest';
import type { SheetWritten } from '#rules/material/sheet.ts';
import { compiled } from './site.ts';

const mixer = (extra: string, rules = '{}') => `
l:
  m:
    kind: drum-mixer
    material: adhesive-a
    ${extra}
    signals:
      agitator: { topic: a, payload: { kind: plain }, unit: /min }
      feed: { topic: f, payload: { kind: plain }, unit: "1" }
      level: { topic: v, payload: { kind: plain }, unit: mm }
    rules: ${rules}
`;
const built = (extra: string, rules?: string, more: Partial<SheetWritten> = {}) =>
  compiled(mixer(extra, rules), {}, more);
const rule = (of: ReturnType<typeof built>, name: string) =>
  of.rules.find(({ id }) => id === `l/m/${name}`);
const number = (of: ReturnType<typeof built>, setting: string) =>
  rule(of, 'drawn-unmixed')!.settings.find((each) => each.setting === setting)!.written;

/** Half a pint, a gallon, five gallons, a drum: common practice, no published source. */
describe('mixing a new container', () => {
  test.each([
    ['', '8 h', '20 /min'],
    ['container_size: 208 L', '8 h', '20 /min'],
    ['container_size: 5 [gal_us]', '30 min', '5 /min'],
    ['container_size: 10 L', '30 min', '5 /min'],
    ['container_size: 1 [gal_us]', '15 min', '5 /min'],
    ['container_size: 236 mL', '5 min', '5 /min'],
  ])('%s: %s, counted from %s', (extra, time, speed) => {
    const of = built(extra);
    expect(of.problems).toEqual([]);
    expect([number(of, 'not_before'), number(of, 'counting_low')]).toEqual([time, speed]);
  });
  test('the sheet wins, each size with its own field', () => {
    const sheet = { mix_drum: '10 h', mix_gallon: '20 min' };
    expect(number(built('', '{}', sheet), 'not_before')).toBe('600 min');
    expect(number(built('container_size: 3 L', '{}', sheet), 'not_before')).toBe('20 min');
    expect(number(built('container_size: 19 L', '{}', sheet), 'not_before')).toBe('30 min');
  });
  test('says how, and what would confirm it', () => {
    const drawn = rule(built(''), 'drawn-unmixed')!;
    expect(drawn.readiness).toBe('armed-limit-unconfirmed');
    expect(drawn.needs.join()).toMatch(/mix_drum/);
    expect(drawn.facts).toMatchObject({
      mixing: {
        text: 'crank it by hand, its drive locked out, until its bottom is loose, then run its agitator',
      },
    });
  });
  test('nobody knows beyond a drum, unless the site says', () => {
    const of = built('container_size: 1 m3');
    expect(rule(of, 'drawn-unmixed')).toBeUndefined();
    expect(of.coverage.stations[0]!.moot.map(({ why }) => why).join()).toMatch(
      /beyond a drum of 210 L/,
    );
    const said = built('container_size: 1 m3', '{ drawn-unmixed: { not_before: 24 h } }');
    expect(number(said, 'not_before')).toBe('24 h');
  });
});

describe('20 to 30 turns a minute', () => {
  test('hold for the agitator built into a drum', () => {
    expect(rule(built(''), 'agitator-fast')).toBeDefined();
  });
  test('say nothing of the mixer of a pail, which needs its own', () => {
    const pail = built('container_size: 19 L');
    expect(rule(pail, 'agitator-fast')).toBeUndefined();
    expect(pail.coverage.stations[0]!.moot.map(({ rule: id }) => id)).toEqual([
      'l/m/agitator-fast',
      'l/m/agitator-slow',
    ]);
    const own = built('container_size: 19 L', '{ agitator-fast: { high: 400 /min } }');
    expect(rule(own, 'agitator-fast')?.settings).toContainEqual(
      expect.objectContaining({ setting: 'high', written: '400 /min' }),
    );
  });
});

describe('at the bottom of the drum', () => {
  test('a standing agitator is not told, once somebody gave the level of the blade', () => {
    const gates = (rules: string) => rule(built('', rules), 'agitator-stopped')!.gates;
    expect(gates('{ blade-uncovered: { low: 250 mm } }')).toMatchObject([
      { signal: 'l/m/level', low: 250 },
    ]);
    expect(gates('{}')).toEqual([]);
  });
});

test.each(['5 Cel', '0 L', '3 m3'])('%s is no size of a container', (size) => {
  expect(built(`container_size: ${size}`).problems).toMatchObject([
    { path: ['lines', 'l', 'm', 'container_size'], problem: `${size} is no size of a container` },
  ]);
});
