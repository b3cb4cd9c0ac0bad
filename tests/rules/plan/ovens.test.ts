/** What an oven is judged by where nobody measures the metal, and with infrared heat. */
import { describe, expect, test } from 'vitest';
import { compiled, signalLine } from './site.ts';

const heat = '{ under-dried: { above: 65 Cel, above_for: 10 min }, over-baked: { peak: 95 Cel } }';
const signals = `air: ${signalLine('a', 'Cel')}, loaded: ${signalLine('l', '1')}`;
const trial = 'derived: { part-temperature: { time_constant: 8 min } },';
const oven = (more = '', extra = '', kind = 'drying-oven', rules = heat) =>
  compiled(
    `l: { o: { kind: ${kind}, ${extra} signals: { ${signals} ${more} }, rules: ${rules} } }`,
  );
const judged = (site: ReturnType<typeof oven>, rule: string): readonly string[] | undefined =>
  site.rules.find(({ id }) => id === `l/o/${rule}`)?.signals;

describe.each([
  ['drying-oven', heat, 'under-dried'],
  ['primer-pre-bake', '{ under-baked: { above_for: 6 min } }', 'under-baked'],
])('%s', (kind, rules, least) => {
  test('judges the metal where it is measured', () => {
    const site = oven(`, metal: ${signalLine('m', 'Cel')}`, trial, kind, rules);
    expect(site.problems).toEqual([]);
    expect(judged(site, least)).toEqual(['l/o/metal', 'l/o/loaded']);
  });
  test('judges the metal worked out from the air where it is not, and follows its runs by it', () => {
    const site = oven('', trial, kind, rules);
    expect(site.problems).toEqual([]);
    expect(judged(site, least)).toEqual(['l/o/part-temperature', 'l/o/loaded']);
    const [run] = site.plan.runs;
    expect(site.plan.signals[run!.metal!]!.id).toBe('l/o/part-temperature');
  });
});

test('without a trial run nothing is worked out from air, and coverage asks for one', () => {
  const site = oven('', '', 'drying-oven', '{}');
  expect(site.rules.map(({ id }) => id)).not.toContain('l/o/under-dried');
  const [station] = site.coverage.stations;
  expect(station!.notWorkedOut).toEqual([
    {
      signal: 'l/o/part-temperature',
      needs: [expect.stringContaining('from a trial run with thermocouples')],
    },
  ]);
});

test('with infrared heat air tells nothing of the metal, and saying so is a problem', () => {
  const infrared = 'heating: infrared,';
  const bare = oven('', infrared, 'drying-oven', '{}');
  expect(bare.problems).toEqual([]);
  expect(bare.plan.signals.map(({ id }) => id)).not.toContain('l/o/part-temperature');
  expect(oven('', `${infrared} ${trial}`, 'drying-oven', '{}').problems).toEqual([
    expect.objectContaining({
      path: ['lines', 'l', 'o', 'derived', 'part-temperature'],
      problem: expect.stringContaining('Infrared heats the part and not the air'),
    }),
  ]);
});
