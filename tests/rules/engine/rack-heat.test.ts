/** The heat of racks, summed from oven to oven: by what people say, by what signals say, whatever happens meanwhile. */
import { describe, expect, test } from 'vitest';
import { rackDose } from '#rules/derive/rack-dose.ts';
import { racksMax } from '#rules/engine/rack-heat-state.ts';
import { Engine } from '#rules/engine.ts';
import type { MarkCommand } from '#rules/input.ts';
import type { Kinetics } from '#rules/process/heat-equivalent.ts';
import { quality } from '#rules/signal/quality.ts';
import { Drive } from './drive.ts';
import { smallPlan } from './small-plan.ts';

const min = 60_000;
const kinetics: Kinetics = { by: 'z', zK: 30 };
const by = { referenceC: 80, kinetics };
const settled = (now: Parameters<typeof rackDose.settled>[1]) => rackDose.settled(by, now);
const dose = { unit: 's', digits: 0 };
const state = { unit: '1', digits: 0 };

const planBy = (second = by, revision = 'test') =>
  smallPlan({
    revision,
    signals: {
      'l/p/loaded': state,
      'l/p/metal': {},
      'l/d/loaded': state,
      'l/d/metal': {},
      'l/p/dose': dose,
      'l/d/dose': dose,
    },
    derived: {
      'l/p/dose': { inputs: ['l/p/metal', 'l/p/loaded'], settled, carries: 0 },
      'l/d/dose': { inputs: ['l/d/metal', 'l/d/loaded'], settled, carries: 1 },
    },
    marks: {
      'l/p/in': 'rack',
      'l/p/out': 'rack',
      'l/d/in': 'rack',
      'l/d/out': 'rack',
      'l/x/blasted': 'rack',
    },
    heats: {
      ovens: ['p', 'd'].map((o) => ({
        station: `l/${o}`,
        metal: `l/${o}/metal`,
        loaded: `l/${o}/loaded`,
        arrived: `l/${o}/in`,
        left: `l/${o}/out`,
      })),
      counts: [
        { ...by, oven: 0, signal: 'l/p/dose' },
        { ...second, oven: 1, signal: 'l/d/dose' },
      ],
      fresh: ['l/x/blasted'],
    },
    rules: {
      over: {
        kind: 'band',
        on: 'l/d/dose',
        settings: { high: '30 min' },
        hold: {
          what: 'rack',
          item: 'none',
          named: ['l/d/in', 'l/d/out'],
          // The place of l/d/dose.
          hottest: 0,
        },
      },
    },
  });
const plan = planBy();

const say = (
  drive: Drive,
  atMin: number,
  mark: string,
  item: string,
  happenedMin = atMin,
): Drive => {
  const [, station = '', name = ''] = /^(.*)\/([^/]+)$/.exec(mark) ?? [];
  const command: MarkCommand = {
    kind: 'command',
    verb: 'mark',
    judged: atMin * min,
    station,
    mark: name,
    item,
    at: happenedMin * min,
    by: 'a',
  };
  return drive.input(command).advance(command.judged);
};

/** A load of so many whole minutes at 80 °C: worth as many minutes. The rack is named as it comes in. */
function bake(drive: Drive, oven: 'p' | 'd', fromMin: number, toMin: number, rack?: string): Drive {
  drive.values(`l/${oven}/loaded`, [fromMin * min - 1_000, 0]);
  if (rack !== undefined) say(drive, fromMin, `l/${oven}/in`, rack);
  drive.values(`l/${oven}/metal`, [fromMin * min, 80]);
  drive.values(`l/${oven}/loaded`, [fromMin * min, 1]);
  for (let m = fromMin + 1; m <= toMin; m += 1) drive.values(`l/${oven}/metal`, [m * min, 80]);
  drive.values(`l/${oven}/loaded`, [toMin * min, 0]);
  return drive.advance(toMin * min + 2_000);
}

const told = (drive: Drive, signal = 'l/d/dose') => {
  const { value, quality: code } = drive.engine.save().latest[signal]!;
  return [value / 60, code] as const;
};

describe('a rack’s heat is the sum over its ovens', () => {
  test('pre-bake, drying and once more drying', () => {
    const drive = bake(
      bake(bake(new Drive(plan), 'p', 1, 11, 'R-1'), 'd', 20, 35, 'R-1'),
      'd',
      40,
      50,
      'R-1',
    );
    // Its load’s own: the rack has moved on.
    expect(told(drive, 'l/p/dose')).toEqual([10, quality.unobserved]);
    expect(told(drive)).toEqual([35, quality.good]);
    const raised = drive.effects.filter((e) => e.kind === 'transition');
    expect(raised.map(({ transition }) => transition)).toEqual(['raised']);
    expect(drive.effects.filter((e) => e.kind === 'hold').map(({ item }) => item)).toEqual(['R-1']);
  });

  test('and no other rack’s', () => {
    const drive = bake(bake(new Drive(plan), 'p', 1, 11, 'R-1'), 'd', 20, 35, 'R-2');
    expect(told(drive)).toEqual([15, quality.good]);
  });

  test('by the count of the oven that is asked, for every oven', () => {
    const drive = new Drive(planBy({ referenceC: 50, kinetics }));
    expect(told(bake(drive, 'p', 1, 11, 'R-1'), 'l/p/dose')).toEqual([10, quality.good]);
    // Thirty kelvin above its reference: ten times the time.
    expect(told(bake(drive, 'd', 20, 25, 'R-1'))).toEqual([150, quality.good]);
  });

  test('until other parts hang on it', () => {
    const drive = bake(new Drive(plan), 'p', 1, 11, 'R-1');
    say(drive, 15, 'l/x/blasted', 'R-1');
    expect(told(bake(drive, 'd', 20, 25, 'R-1'))).toEqual([5, quality.good]);
    // Said late: it was blasted before it was dried, not before it is dried again.
    say(drive, 26, 'l/x/blasted', 'R-1', 15);
    drive.advance(27 * min);
    expect(told(bake(drive, 'd', 30, 35, 'R-1'))).toEqual([10, quality.good]);
  });
});

describe('whichever rack it is', () => {
  test('named late, the first of a load has had all of it', () => {
    const drive = new Drive(plan);
    drive.values('l/d/loaded', [0, 0], [min, 1]).values('l/d/metal', [min, 80], [6 * min, 80]);
    say(drive, 6, 'l/d/in', 'R-1');
    drive.values('l/d/metal', [8 * min, 80]).advance(9 * min);
    expect(told(drive)).toEqual([7, quality.good]);
  });

  test('named after the load has left, it has had all of that load, not of the next', () => {
    const drive = bake(new Drive(plan), 'd', 1, 11);
    expect(told(drive)).toEqual([10, quality.unobserved]);
    say(drive, 12, 'l/d/in', 'R-1', 3).advance(13 * min);
    expect(told(drive)).toEqual([10, quality.good]);
    bake(drive, 'd', 20, 25, 'R-2');
    expect(told(drive)).toEqual([5, quality.good]);
    expect(told(bake(drive, 'd', 30, 31, 'R-1'))).toEqual([11, quality.good]);
  });

  test('of several the one that has had most, until it comes out', () => {
    const drive = bake(new Drive(plan), 'p', 1, 11, 'R-1');
    drive.values('l/d/loaded', [19 * min, 0]);
    say(say(drive, 20, 'l/d/in', 'R-1'), 20, 'l/d/in', 'R-2');
    drive.values('l/d/metal', [20 * min, 80]).values('l/d/loaded', [20 * min, 1]);
    drive.values('l/d/metal', [25 * min, 80]).advance(26 * min);
    expect(told(drive)).toEqual([15, quality.good]);
    say(drive, 27, 'l/d/out', 'R-1').advance(28 * min);
    expect(told(drive)).toEqual([5, quality.good]);
  });

  test('scanned twice, it is one rack', () => {
    const drive = new Drive(plan).values('l/d/loaded', [0, 0]);
    say(drive, 1, 'l/d/in', 'R-1');
    drive.values('l/d/metal', [min, 80]).values('l/d/loaded', [min, 1], [2 * min, 1]);
    drive.values('l/d/metal', [3 * min, 80]);
    say(drive, 3, 'l/d/in', 'R-1');
    drive.values('l/d/metal', [6 * min, 80]).advance(7 * min);
    expect(told(drive)).toEqual([5, quality.good]);
  });
});

describe('what nobody saw makes it partial', () => {
  test('a load that was in before observation began', () => {
    const drive = new Drive(plan).values('l/d/loaded', [min, 1]).values('l/d/metal', [min, 80]);
    say(drive, 2, 'l/d/in', 'R-1');
    drive.values('l/d/metal', [4 * min, 80]).advance(5 * min);
    expect(told(drive)).toEqual([3, quality.unobserved]);
  });

  test('downtime in the midst of a stay, for every oven after it', () => {
    const drive = new Drive(plan).values('l/p/loaded', [0, 0]);
    say(drive, 1, 'l/p/in', 'R-1');
    drive.values('l/p/metal', [min, 80]).values('l/p/loaded', [min, 1]);
    drive.values('l/p/metal', [3 * min, 80]);
    drive.input({ kind: 'gap', judged: 9 * min, fromMs: 4 * min, toMs: 9 * min });
    drive.values('l/p/metal', [9 * min, 80], [11 * min, 80]).values('l/p/loaded', [11 * min, 0]);
    drive.advance(12 * min);
    // Three minutes until it was dark, two after it.
    expect(told(drive, 'l/p/dose')).toEqual([5, quality.unobserved]);
    expect(told(bake(drive, 'd', 20, 25, 'R-1'))).toEqual([10, quality.unobserved]);
    say(drive, 26, 'l/x/blasted', 'R-1');
    expect(told(bake(drive, 'd', 30, 35, 'R-1'))).toEqual([5, quality.good]);
  });

  test('metal that cannot be read', () => {
    const drive = bake(new Drive(plan), 'p', 1, 4, 'R-1');
    drive.values('l/p/loaded', [9 * min, 0]);
    say(drive, 10, 'l/p/in', 'R-1').values('l/p/loaded', [10 * min, 1]);
    drive.values('l/p/metal', [10 * min, 80], [12 * min, 80]);
    drive.offer({ signal: 'l/p/metal', at: 13 * min, quality: quality.outOfRange });
    drive.values('l/p/metal', [14 * min, 80], [15 * min, 80]).advance(16 * min);
    expect(told(drive, 'l/p/dose')).toEqual([7, quality.unobserved]);
  });
});

describe('kept', () => {
  const lived = (drive: Drive): Drive => {
    bake(bake(drive, 'p', 1, 11, 'R-1'), 'd', 20, 25, 'R-2');
    drive.values('l/d/loaded', [29 * min, 0]);
    say(drive, 30, 'l/d/in', 'R-1');
    drive.values('l/d/metal', [30 * min, 80]).values('l/d/loaded', [30 * min, 1]);
    return drive.values('l/d/metal', [33 * min, 81.3]);
  };
  const on = (drive: Drive): Drive => drive.values('l/d/metal', [36 * min, 84.1]).advance(37 * min);

  test('a snapshot in the midst of it changes nothing', () => {
    const [whole, before] = [lived(new Drive(plan)), lived(new Drive(plan))];
    const after = on(Drive.resume(before));
    on(whole);
    expect(after.engine.save()).toEqual(whole.engine.save());
    expect(told(after)).toEqual(told(whole));
  });

  test('a clock that is set anew moves its times and no heat', () => {
    const drive = lived(new Drive(plan));
    drive.input({ kind: 'rebase', judged: 34 * min, deltaMs: 100 * min }).advance(34 * min);
    drive.values('l/d/metal', [136 * min, 81.3]).advance(137 * min);
    const straight = lived(new Drive(plan))
      .values('l/d/metal', [36 * min, 81.3])
      .advance(37 * min);
    expect(told(drive)[0]).toBeCloseTo(told(straight)[0], 3);
  });

  test('what racks had before stands under another way of counting as at least so much', () => {
    const other = planBy({ referenceC: 50, kinetics }, 'other');
    const drive = bake(new Drive(plan, 0, [other]), 'p', 1, 11, 'R-1');
    drive.input({ kind: 'site', judged: 12 * min, revision: 'other' }).advance(12 * min);
    expect(told(bake(drive, 'd', 20, 25, 'R-1'))).toEqual([50, quality.unobserved]);
  });

  test('another version of it is not taken up', () => {
    const drive = bake(new Drive(plan), 'p', 1, 11, 'R-1');
    const saved = drive.engine.save();
    const engine = Engine.restore(plan, { ...saved, racks: { ...saved.racks!, version: 0 } }, {
      effect: () => {},
      derived: () => {},
    } as never);
    expect(Object.keys(engine.save().racks!.racks)).toEqual([]);
  });

  test('so many racks, and the one without heat for the longest leaves', () => {
    const drive = new Drive(plan).values('l/d/loaded', [0, 1]);
    for (let i = 0; i <= racksMax; i += 1) {
      say(drive, 1 + i, 'l/d/in', `R-${i}`);
      say(drive, 1 + i, 'l/d/out', `R-${i}`);
    }
    const kept = Object.keys(drive.engine.save().racks!.racks);
    expect(kept).toHaveLength(racksMax);
    expect(kept).not.toContain('r-0');
    expect(kept).toContain(`r-${racksMax}`);
  });
});
