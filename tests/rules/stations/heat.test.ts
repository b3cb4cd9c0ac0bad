/** Ovens, residue and tank in the engine: what a line does, and what people are told of it. */
import { describe, expect, test } from 'vitest';
import { Drive } from '../engine/drive.ts';
import { compiled, signalLine } from '../plan/site.ts';

const minute = 60_000;
const cel = (topic: string) => signalLine(topic, 'Cel');
const state = (topic: string) => signalLine(topic, '1');

/** One value every ten seconds from one minute to the other, the last excluded. */
const each = (from: number, to: number, value: (m: number) => number) =>
  Array.from({ length: (to - from) * 6 }, (_, i) => {
    const m = from + i / 6;
    return [Math.round(m * minute), Math.round(value(m) * 10) / 10] as const;
  });
const line = (station: string) => new Drive(compiled(`l: { x: ${station} }`).plan);
/** `<minute> <rule> <transition> <priority>`; what is only told again is left out. */
const told = (drive: Drive): string[] =>
  drive.effects.flatMap((effect) =>
    effect.kind === 'transition' && effect.again === undefined
      ? [
          `${Number((effect.judged / minute).toFixed(2))} ${effect.rule.slice(4)} ${effect.transition} ${effect.priority}`,
        ]
      : [],
  );
const rules = (drive: Drive): string[] =>
  told(drive).flatMap((what) => (what.includes(' raised ') ? [what.split(' ')[1]!] : []));

describe('a surface that gathers residue', () => {
  const place = (rules = '{}') =>
    line(`{ kind: residue, signals: { surface: ${cel('s')} }, rules: ${rules} }`);
  test('early at 92, act at 102, at 112 the limit, which stays until somebody resets it', () => {
    const drive = place();
    drive.values('l/x/surface', ...each(0, 10, () => 91.9));
    expect(told(drive)).toEqual([]);
    drive.values('l/x/surface', ...each(10, 20, () => 92));
    expect(told(drive)).toEqual(['11 early raised medium']);
    drive.values('l/x/surface', ...each(20, 30, () => 102));
    expect(told(drive).slice(1)).toEqual(['20.5 act raised high']);
    drive.values('l/x/surface', ...each(30, 31, () => 112));
    expect(told(drive).slice(2)).toEqual(['30.08 at-limit raised high']);
    drive.values('l/x/surface', ...each(31, 40, () => 60));
    const end = told(drive)
      .slice(3)
      .map((what) => what.split(' ').slice(1, 3).join(' '));
    expect(end.sort()).toEqual(['act returned', 'at-limit returned', 'early returned']);
    const states = drive.effects.flatMap((effect) =>
      effect.kind === 'transition' && effect.transition === 'returned'
        ? [`${effect.rule.slice(4)} ${effect.to}`]
        : [],
    );
    expect(states).toContain('at-limit latched-unacknowledged');
    expect(states).toContain('early returned-unacknowledged');
  });
  test('rising fast is foretold before it is early', () => {
    const drive = place();
    drive.values('l/x/surface', ...each(0, 8, (m) => 81 + m));
    expect(rules(drive)).toEqual(['approaching']);
  });
  test('an oven that heats up from cold in the morning is not', () => {
    const drive = place();
    const warm = (m: number) => 75 - 55 * Math.exp(-m / 15);
    drive.values('l/x/surface', ...each(0, 120, warm));
    expect(told(drive)).toEqual([]);
  });
});

describe('waste', () => {
  test('a bin more than 10 K over its air for 5 min, at once and high', () => {
    const drive = line(`{ kind: residue, signals: { bin: ${cel('b')}, bin-air: ${cel('a')} } }`);
    drive.values('l/x/bin-air', [0, 20], [1, 20]);
    drive.values('l/x/bin', ...each(1, 10, () => 30), ...each(10, 20, () => 30.1));
    expect(told(drive)).toEqual(['15 bin-warm raised high']);
  });
  test('racks stacked above 50 °C', () => {
    const drive = line(`{ kind: residue, signals: { stack: ${cel('s')} } }`);
    drive.values('l/x/stack', ...each(0, 10, () => 50), ...each(10, 20, () => 50.1));
    expect(told(drive)).toEqual(['15 stack-hot raised medium']);
  });
});

describe('an oven with a load inside', () => {
  const oven = (extra = '', rules = '{}') =>
    line(
      `{ kind: drying-oven, ${extra} signals: { metal: ${cel('m')}, loaded: ${state('l')}, conveyor: ${state('c')}, heat: ${state('h')}, exhaust-proof: ${state('e')} }, rules: ${rules} }`,
    );
  test.each([
    ['', '11 conveyor-stopped raised high'],
    ['heating: infrared,', '10.17 conveyor-stopped raised high'],
  ])('a conveyor that stops %s', (extra, expected) => {
    const drive = oven(extra);
    drive.values('l/x/loaded', [0, 1]);
    drive.values('l/x/conveyor', ...each(0, 10, () => 1), ...each(10, 12, () => 0));
    expect(told(drive)).toEqual([expected]);
  });
  test('an empty oven’s conveyor may stand; where nobody can tell, it may not', () => {
    const empty = oven();
    empty.values('l/x/loaded', [0, 0]).values('l/x/conveyor', ...each(1, 20, () => 0));
    expect(told(empty)).toEqual([]);
    const unknown = oven();
    unknown.values('l/x/conveyor', ...each(0, 20, () => 0));
    expect(told(unknown)).toEqual(['1 conveyor-stopped raised high']);
  });
  test('exhaust lost while it heats, within half a minute; not while it is off', () => {
    const drive = oven();
    drive.values('l/x/heat', [0, 0]).values('l/x/exhaust-proof', ...each(0, 5, () => 0));
    expect(told(drive)).toEqual([]);
    drive.values('l/x/heat', [5 * minute, 1]).values('l/x/exhaust-proof', ...each(5, 6, () => 0));
    expect(rules(drive)).toEqual(['exhaust-lost']);
  });
  test('under-dried is told early, holds the rack, and is a run with its two sides', () => {
    const drive = oven(
      '',
      '{ under-dried: { above: 65 Cel, above_for: 10 min, dwell: 25 min }, over-baked: { peak: 100 Cel } }',
    );
    drive.values('l/x/conveyor', [0, 1]).values('l/x/loaded', [minute, 1]);
    drive
      .values('l/x/metal', ...each(1, 26, (m) => 20 + 1.5 * m))
      .values('l/x/loaded', [26 * minute, 0]);
    expect(told(drive)).toEqual(['16 under-dried raised medium']);
    expect(drive.effects.filter((effect) => effect.kind === 'hold')).toMatchObject([
      { what: 'rack', item: 'l/x', action: 'set' },
    ]);
    expect(drive.effects.filter((effect) => effect.kind === 'run').at(-1)).toMatchObject({
      action: 'closed',
      features: { under: true, over: false, peak: 58.8 },
    });
  });
});

describe('a second sensor', () => {
  test('more than 5 K away once the oven has been steady for 10 min is told, with the hotter to go by', () => {
    const drive = line(
      `{ kind: drying-oven, signals: { zone-1-air: ${cel('a')}, zone-1-check: ${cel('b')} } }`,
    );
    const differ = (from: number, to: number, k: number) => {
      for (let m = from; m < to; m += 1)
        drive
          .values('l/x/zone-1-air', [m * minute, 90])
          .values('l/x/zone-1-check', [m * minute + 1, 90 + k]);
    };
    differ(0, 20, 5);
    expect(told(drive)).toEqual([]);
    differ(20, 40, 9);
    expect(told(drive)).toEqual(['31 sensors-disagree-1 raised medium']);
    const raised = drive.effects[0]!;
    expect(raised.kind === 'transition' && raised.evidence.input).toBe(1);
  });
});

describe('a tank', () => {
  const tank = (signals: string, rules = '{}') =>
    line(`{ kind: dip-tank, signals: { ${signals} }, rules: ${rules} }`);
  test('bath temperature: low at 3 K, medium at 6 K', () => {
    const drive = tank(`temperature: ${cel('t')}`, '{ bath-temperature: { target: 23 Cel } }');
    drive.values('l/x/temperature', ...each(0, 20, () => 26), ...each(20, 40, () => 26.1));
    expect(told(drive)).toEqual(['35 bath-temperature raised low']);
    drive.values('l/x/temperature', ...each(40, 60, () => 29.1));
    expect(told(drive).slice(1)).toEqual(['55 bath-temperature realarmed medium']);
  });
  test('weir fall from two levels', () => {
    const mm = (topic: string) => signalLine(topic, 'mm');
    const drive = tank(`tank-level: ${mm('t')}, weir-level: ${mm('w')}`);
    drive.values('l/x/tank-level', [0, 900]);
    drive.values('l/x/weir-level', ...each(0, 5, () => 870), ...each(5, 10, () => 869));
    expect(told(drive)).toEqual(['7 weir-fall raised medium']);
  });
  test('a torn filter is a drop that falls while the loop runs', () => {
    const drive = tank(
      `flow: ${signalLine('f', 'L/min')}, filter-dp: ${signalLine('d', 'bar')}`,
      '{ circulation-lost: { target: 40 L/min }, filter-loaded: { target: 0.2 bar } }',
    );
    drive.values('l/x/flow', [0, 40]);
    drive.values('l/x/filter-dp', ...each(0, 6, () => 10), ...each(6, 12, () => 9.9));
    expect(told(drive)).toEqual(['11 filter-torn raised medium']);
    drive.values('l/x/flow', [12 * minute, 0]);
    expect(told(drive).at(-1)).toBe('12 filter-torn returned medium');
    drive.values('l/x/flow', ...each(12, 15, () => 0));
    expect(told(drive).at(-1)).toBe('14 circulation-lost raised medium');
  });
  test('withdrawal is judged while parts are drawn out', () => {
    const drive = tank(`withdrawal: ${signalLine('w', 'm/min')}, withdrawing: ${state('u')}`);
    const at = (m: number, value: number) => [m * minute, value] as const;
    drive.values('l/x/withdrawing', [0, 0]).values('l/x/withdrawal', at(1, 0), at(2, 0));
    drive
      .values('l/x/withdrawing', at(3, 1))
      .values('l/x/withdrawal', at(3, 0.0183), at(4, 0.0183));
    expect(told(drive)).toEqual([]);
    drive.values('l/x/withdrawal', at(5, 0.0184), at(6, 0.0184));
    expect(told(drive)).toEqual(['5.17 withdrawal raised medium']);
  });
});
