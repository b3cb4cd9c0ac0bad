/** Station rules in the engine: what a line does, and what people are told of it. */
import { describe, expect, test } from 'vitest';
import { Drive } from '../engine/drive.ts';
import { compiled, signalLine } from '../plan/site.ts';

const minute = 60_000;
const hour = 60 * minute;

/** One value a minute from one minute to the next, the last excluded. */
const each = (from: number, to: number, value: (i: number) => number) =>
  Array.from({ length: to - from }, (_, i) => [(from + i) * minute, value(i)] as const);

const mixer = () =>
  new Drive(
    compiled(`
l: { m: { kind: drum-mixer, signals: { agitator: ${signalLine('a', '/min')}, in-use: ${signalLine('u', '1')} } } }
`).plan,
  );
const raised = (drive: Drive): string[] =>
  drive.effects.flatMap((effect) =>
    effect.kind === 'transition' && effect.transition === 'raised'
      ? [`${effect.judged / minute} ${effect.rule.slice(4)} ${effect.priority}`]
      : [],
  );

describe('an agitator that stands', () => {
  test('is stopped after 10 min, urgent after an hour, and never slow', () => {
    const drive = mixer();
    drive.values('l/m/in-use', [0, 1]);
    drive.values('l/m/agitator', ...each(1, 10, () => 25), ...each(10, 120, () => 0));
    expect(raised(drive)).toEqual(['20 agitator-stopped medium', '70 agitator-rest high']);
  });
  test('is nobody’s business while no drum is in use', () => {
    const drive = mixer();
    drive.values('l/m/in-use', [0, 0]);
    drive.values('l/m/agitator', ...each(1, 120, () => 0));
    expect(raised(drive)).toEqual([]);
  });
  test('slow at 19, not at 20; fast above 30, not at 30', () => {
    const drive = mixer();
    drive.values('l/m/in-use', [0, 1]);
    drive.values('l/m/agitator', ...each(1, 30, () => 20), ...each(30, 60, () => 30));
    expect(raised(drive)).toEqual([]);
    drive.values('l/m/agitator', ...each(60, 80, () => 19), ...each(80, 90, () => 31));
    expect(raised(drive)).toEqual(['65 agitator-slow low', '81 agitator-fast medium']);
  });
});

describe('a store that cools', () => {
  const store = () =>
    new Drive(
      compiled(`
l: { s: { kind: adhesive-store, container: drum-3, signals: { wall: ${signalLine('w', 'Cel')} } } }
`).plan,
    );
  test('is foretold, then cold, then suspected frozen at 1 Cel itself, with a hold', () => {
    const drive = store();
    // 12 Cel, falling 3 K an hour to 1 Cel and staying there.
    const falling = (i: number) => Math.max(1, Math.round((12 - i * 0.05) * 10) / 10);
    drive.values('l/s/wall', ...each(0, 400, falling));
    const rules = raised(drive).map((line) => line.split(' ').slice(1).join(' '));
    expect(rules).toEqual([
      'freeze-approaching high',
      'cold-adhesive medium',
      'freeze-suspected medium',
    ]);
    const approach = drive.effects.find(
      (effect) => effect.kind === 'transition' && effect.rule === 'l/s/freeze-approaching',
    );
    // 3 K an hour above 2 Cel for two hours: foretold below 8 Cel, so before it is at 2.
    expect(approach?.judged).toBeGreaterThanOrEqual(80 * minute);
    expect(approach?.judged).toBeLessThan(200 * minute);
    const holds = drive.effects.filter((effect) => effect.kind === 'hold');
    expect(holds).toMatchObject([{ what: 'container', item: 'drum-3', action: 'set' }]);
  });
  test('warms again: cold is over by itself, the freeze stays until somebody resets it', () => {
    const drive = store();
    drive.values('l/s/wall', ...each(0, 30, () => 0.5), ...each(30, 60, () => 15));
    drive.advance(2 * hour);
    const over = drive.effects.flatMap((effect) =>
      effect.kind === 'transition' && effect.transition === 'returned'
        ? [[effect.rule, effect.to]]
        : [],
    );
    expect(over).toEqual([
      ['l/s/cold-adhesive', 'returned-unacknowledged'],
      ['l/s/freeze-suspected', 'latched-unacknowledged'],
    ]);
  });
  test('1.1 Cel is cold, not frozen', () => {
    const drive = store();
    drive.values('l/s/wall', ...each(0, 120, () => 1.1));
    expect(raised(drive).some((line) => line.includes('freeze-suspected'))).toBe(false);
  });
});

test('wet air: judged by its dew point, and by the coldest pipe where that is colder', () => {
  const drive = new Drive(
    compiled(`
l: { a: { kind: compressed-air, signals: { pdp: ${signalLine('p', 'Cel')}, pipe: ${signalLine('q', 'Cel')} } } }
`).plan,
  );
  for (let i = 0; i < 30; i += 1) {
    drive.values('l/a/pipe', [i * minute, 8]);
    drive.values('l/a/pdp', [i * minute + 20, i < 10 ? -5 : 3]);
  }
  const rules = raised(drive).map((line) => line.split(' ').slice(1).join(' '));
  // 8 - 3 is 5 K, under the 10 K; +3 Cel itself is below the cap of +5.
  expect(rules).toEqual(['pipe-margin medium']);
});
