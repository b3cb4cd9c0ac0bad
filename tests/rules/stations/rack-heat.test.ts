/** A rack’s heat over pre-bake and drying, through a compiled site: raised where it is too much, held, ended. */
import { expect, test } from 'vitest';
import { stringify } from 'yaml';
import type { Effect, MarkCommand } from '#rules/input.ts';
import { readSheet } from '#rules/material/read-sheet.ts';
import { compileSite } from '#rules/plan/compile.ts';
import { siteWritten } from '#rules/site/schema.ts';
import { Drive } from '../engine/drive.ts';

const min = 60_000;
const sensor = (topic: string, unit: string) => ({ topic, payload: { kind: 'plain' }, unit });
const oven = (name: string, kind: string, more: object = {}) => ({
  kind,
  material: 'adhesive-a',
  signals: { metal: sensor(`${name}/m`, 'Cel'), loaded: sensor(`${name}/l`, '1') },
  ...more,
});

function siteOf(lines: object) {
  const { sheet } = readSheet({
    name: 'A',
    source: 'made for this test',
    dose_at: '80 Cel',
    dose_z: '30 K',
    dose_limit: '30 min',
  });
  return compileSite(
    siteWritten.parse({
      site: 'works',
      timezone: 'Etc/UTC',
      materials: { 'adhesive-a': 'a.yaml' },
      lines,
    }),
    { 'adhesive-a': sheet },
    {},
    'r',
  );
}

const line = {
  l: {
    prep: {
      kind: 'preparation',
      signals: { air: sensor('p/t', 'Cel'), humidity: sensor('p/h', '%') },
    },
    bake: oven('b', 'primer-pre-bake'),
    dry: oven('d', 'drying-oven'),
    again: oven('e', 'drying-oven'),
  },
};

class Floor {
  readonly drive: Drive;
  constructor(lines: object) {
    const { plan, problems } = siteOf(lines);
    expect(problems, stringify(problems)).toEqual([]);
    this.drive = new Drive(plan);
  }

  mark(atMin: number, mark: string, item: string): this {
    const [, name, word = ''] = mark.split('/').length === 2 ? ['', ...mark.split('/')] : [];
    const command: MarkCommand = {
      kind: 'command',
      verb: 'mark',
      judged: atMin * min,
      station: `l/${name}`,
      mark: word,
      item,
      by: 'a',
    };
    this.drive.input(command).advance(atMin * min);
    return this;
  }

  /** A rack through an oven at 80 °C: each minute in it is worth one. */
  through(station: string, fromMin: number, toMin: number, rack: string): this {
    const { drive } = this;
    drive.values(`l/${station}/loaded`, [fromMin * min - 1_000, 0]);
    this.mark(fromMin, `${station}/rack-in`, rack);
    drive.values(`l/${station}/metal`, [fromMin * min, 80]);
    drive.values(`l/${station}/loaded`, [fromMin * min, 1]);
    for (let m = fromMin + 1; m <= toMin; m += 1) drive.values(`l/${station}/metal`, [m * min, 80]);
    drive.values(`l/${station}/loaded`, [toMin * min, 0]);
    return this.mark(toMin, `${station}/rack-out`, rack);
  }

  get told(): readonly string[] {
    return this.drive.effects.flatMap((effect: Effect) => {
      if (effect.kind === 'hold') return [`${effect.judged / min} held ${effect.item}`];
      if (effect.kind !== 'transition' || !effect.rule.endsWith('over-dosed')) return [];
      return [`${Math.round(effect.judged / min)} ${effect.transition} ${effect.rule}`];
    });
  }
}

test('pre-bake, drying and drying again are one sum: raised where it passes, the rack held, ended by the next', () => {
  const floor = new Floor(line).mark(0, 'prep/blasted', 'R-1');
  floor.through('bake', 1, 11, 'R-1').through('dry', 20, 35, 'R-1').through('again', 40, 50, 'R-1');
  floor.through('again', 60, 65, 'R-2');
  expect(floor.told).toHaveLength(3);
  const [raised, held, returned] = floor.told;
  expect(raised).toBe('46 raised l/again/over-dosed');
  expect(held).toMatch(/^46\S* held R-1$/);
  expect(returned).toBe('60 returned l/again/over-dosed');
});

test('no single oven gave that much; new parts on the rack begin at nothing', () => {
  const floor = new Floor(line).through('bake', 1, 11, 'R-1').through('dry', 20, 35, 'R-1');
  floor.mark(36, 'prep/blasted', 'R-1').through('dry', 40, 60, 'R-1');
  expect(floor.told).toEqual([]);
});

test('the site’s own word for new parts does the same', () => {
  const floor = new Floor(line).through('bake', 1, 11, 'R-1').through('dry', 20, 35, 'R-1');
  floor.mark(36, 'dry/new-parts', 'R-1').through('dry', 40, 60, 'R-1');
  expect(floor.told).toEqual([]);
});

test('an oven that nobody’s data sheet counts by still heats', () => {
  const plain = { ...oven('b', 'primer-pre-bake'), material: undefined };
  const floor = new Floor({ l: { ...line.l, bake: plain } });
  floor.through('bake', 1, 11, 'R-1').through('dry', 20, 42, 'R-1');
  expect(floor.told[0]).toBe('41 raised l/dry/over-dosed');
});

test('nothing is followed where nobody counts', () => {
  const { plan } = siteOf({
    l: { bake: { ...oven('b', 'primer-pre-bake'), material: undefined } },
  });
  expect(plan.heats).toBeUndefined();
});

test('a wildcard does not say into which oven a rack goes', () => {
  const wild = (derived: object) => ({
    l: {
      dry: {
        ...oven('d', 'drying-oven'),
        signals: {
          metal: { ...sensor('d/+/m', 'Cel'), names: ['probe'] },
          loaded: sensor('d/l', '1'),
        },
        derived,
      },
    },
  });
  const site = siteOf(wild({}));
  expect(site.problems).toEqual([]);
  expect(site.plan.heats).toBeUndefined();
  expect(siteOf(wild({ 'rack-dose': { reference: '80 Cel', z_value: '30 K' } })).problems).toEqual([
    expect.objectContaining({ problem: expect.stringContaining('wildcard') }),
  ]);
});
