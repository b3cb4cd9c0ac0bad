/** What the site may say of ovens and residue: limits, tests, heating, fire plan. */
import { describe, expect, test } from 'vitest';
import { compileSite } from '#rules/plan/compile.ts';
import { compiled, sheetOf, signalLine, siteOf } from './site.ts';

const cel = (topic: string) => signalLine(topic, 'Cel');
const residue = (extra = '', rules = '{}') =>
  `l: { r: { kind: residue, material: adhesive-a, ${extra} signals: { surface: ${cel('s')}, air: ${cel('a')} }, rules: ${rules} } }`;
type Site = ReturnType<typeof compiled>;
const limitOf = (site: Site, rule: string): unknown =>
  site.rules
    .find(({ id }) => id === `l/r/${rule}`)
    ?.settings.find(({ setting }) => setting === 'high')?.written;
const limits = (site: Site) =>
  ['early', 'act', 'at-limit', 'approaching'].map((r) => limitOf(site, r));
const readiness = (site: Site, rule: string) =>
  site.rules.find(({ id }) => id === `l/r/${rule}`)?.readiness;
const said = (site: Site) =>
  site.problems.map(({ path, problem }) => `${path.join('.')}: ${problem}`);

describe('the ignition limit', () => {
  test('stands at once, unconfirmed: people can be hurt', () => {
    const site = compiled(residue());
    expect(limits(site)).toEqual(['92 Cel', '102 Cel', '112 Cel', '112 Cel']);
    for (const rule of ['early', 'act', 'at-limit', 'approaching', 'self-heating'])
      expect(readiness(site, rule), rule).toBe('armed-limit-unconfirmed');
    expect(site.plan.rules.map(({ id }) => id)).toContain('l/r/self-heating');
  });
  test('written lower, takes its warnings along and is confirmed with them', () => {
    const site = compiled(residue('', '{ at-limit: { high: 85 Cel } }'));
    expect(site.problems).toEqual([]);
    expect(limits(site)).toEqual(['65 Cel', '75 Cel', '85 Cel', '85 Cel']);
    for (const rule of ['early', 'act', 'at-limit', 'approaching'])
      expect(readiness(site, rule), rule).toBe('armed');
  });
  test('of a data sheet may lower it, never raise it', () => {
    const sheet = (residue_limit: string) => compiled(residue(), {}, { residue_limit });
    expect(limits(sheet('100 Cel'))).toEqual(['80 Cel', '90 Cel', '100 Cel', '100 Cel']);
    expect(limits(sheet('150 Cel'))).toEqual(['92 Cel', '102 Cel', '112 Cel', '112 Cel']);
  });
  test.each([
    ['{ at-limit: { high: 112 Cel } }', []],
    [
      '{ at-limit: { high: 112.1 Cel } }',
      [
        'lines.l.r.rules.at-limit.high: 112.1 Cel lies above 112 Cel, and no basket test of this residue says that it may',
      ],
    ],
    [
      '{ at-limit: { high: "240 [degF]" } }',
      [expect.stringContaining('240 [degF] lies above 112 Cel')],
    ],
    ['{ early: { high: 93 Cel } }', [expect.stringContaining('93 Cel lies above 92 Cel')]],
    ['{ act: { high: 103 Cel } }', [expect.stringContaining('103 Cel lies above 102 Cel')]],
    ['{ approaching: { high: 120 Cel } }', [expect.stringContaining('lies above 112 Cel')]],
    ['{ early: { high: 60 Cel }, act: { high: 70 Cel } }', []],
  ])('raised without a test of this residue is refused: %s', (rules, problems) => {
    expect(said(compiled(residue('', rules)))).toEqual(problems);
  });
  test('with a basket test it may be raised, and its warnings follow', () => {
    const test =
      'basket_test: { report: "BT-7 of 2026-03", signed_by: EHS, baskets: [{ side: 50 mm, ignition: 168 Cel }, { side: 100 mm, ignition: 149 Cel }, { side: 200 mm, ignition: 132 Cel }] }, ';
    const sheet = { residue_kind: 'oxidising' } as const;
    const site = compiled(residue(test, '{ at-limit: { high: 130 Cel } }'), {}, sheet);
    expect(site.problems).toEqual([]);
    expect(limits(site)).toEqual(['110 Cel', '120 Cel', '130 Cel', '130 Cel']);
  });
  test('a basket test names its report and who signed it', () => {
    expect(() => compiled(residue('basket_test: { report: BT-7 }, '))).toThrow();
  });
});

describe('a place that runs hot by itself', () => {
  const at = (temperature: string) => compiled(residue(`process_temperature: ${temperature}, `));
  const armed = (site: Site) => site.plan.rules.map(({ id }) => id.slice(4)).sort();
  test('past the limit there is no margin, and coverage says so in words', () => {
    const site = at('155 Cel');
    expect(armed(site)).toEqual([
      'bin-unemptied',
      'cleaning-late',
      'self-heating',
      'stuck-air',
      'stuck-surface',
    ]);
    const [coverage] = site.coverage.stations;
    expect(coverage!.unwatched.find(({ hazard }) => hazard === 'ignition')?.why).toBe(
      'No temperature margin here. Cleaning is the only barrier.',
    );
    expect(coverage!.moot.map(({ rule }) => rule)).toEqual([
      'l/r/early',
      'l/r/approaching',
      'l/r/act',
      'l/r/at-limit',
    ]);
    expect(coverage!.watched.map(({ hazard }) => hazard)).toEqual([
      'reaction',
      'thickness',
      'bin-full',
    ]);
  });
  test('between the warnings, those nearer the limit stand', () => {
    const site = at('95 Cel');
    expect(armed(site)).toEqual([
      'act',
      'approaching',
      'at-limit',
      'bin-unemptied',
      'cleaning-late',
      'self-heating',
      'stuck-air',
      'stuck-surface',
    ]);
    expect(site.coverage.stations[0]!.moot).toEqual([
      {
        rule: 'l/r/early',
        why: 'The place itself runs at 95 Cel, past this warning; the ones nearer the limit stand.',
      },
    ]);
  });
  test('below them all nothing is moot', () => {
    expect(at('91.9 Cel').coverage.stations[0]!.moot).toEqual([]);
  });
  test('at the limit itself the margin is gone', () => {
    expect(at('112 Cel').coverage.stations[0]!.moot).toHaveLength(4);
  });
});

describe('the fire plan', () => {
  const withPlan = (plan: object | undefined) =>
    compileSite(
      { ...siteOf(residue()), ...(plan === undefined ? {} : { fire_plan: plan as never }) },
      { 'adhesive-a': sheetOf({}) },
      {},
      'r',
    );
  test('is asked for where it is missing, and the alarm arms all the same', () => {
    const site = withPlan(undefined);
    const card = site.rules.find(({ id }) => id === 'l/r/self-heating')!;
    expect(card.needs).toContain('the site’s fire plan: telephone and muster point (fire_plan)');
    expect(card.facts.plan).toEqual({ kind: 'text', text: '' });
    expect(site.plan.rules.map(({ id }) => id)).toContain('l/r/self-heating');
  });
  test('is printed in the steps where it is given, and asked for no more', () => {
    const plan = { phone: '5555', muster_point: 'gate 2' };
    const card = (given: object) =>
      withPlan(given).rules.find(({ id }) => id === 'l/r/self-heating')!;
    expect(card(plan).facts.plan).toEqual({
      kind: 'text',
      text: ' (telephone 5555, muster point gate 2)',
      german: ' (Telefon 5555, Sammelplatz gate 2)',
    });
    expect(card(plan).needs.some((need) => need.includes('fire plan'))).toBe(false);
    const alone = 'what holds at this site for whoever works alone (fire_plan)';
    expect(card(plan).needs).toContain(alone);
    const whole = card({ ...plan, lone_worker: 'wait for the second person' });
    expect(whole.needs).not.toContain(alone);
    expect(whole.facts.plan).toEqual({
      kind: 'text',
      text: ' (telephone 5555, muster point gate 2; alone: wait for the second person)',
      german: ' (Telefon 5555, Sammelplatz gate 2; allein: wait for the second person)',
    });
  });
  test('a confirmed rule without one is armed, and coverage asks', () => {
    const site = compiled(residue('', '{ at-limit: { high: 100 Cel } }'));
    expect(readiness(site, 'act')).toBe('armed');
    expect(site.coverage.stations[0]!.unconfirmed.find(({ rule }) => rule === 'l/r/act')).toEqual({
      rule: 'l/r/act',
      numbers: [],
      needs: ['the site’s fire plan: telephone and muster point (fire_plan)'],
    });
  });
});

describe('a drying oven', () => {
  const oven = (extra = '', rules = '{}', sheet = {}) =>
    compiled(
      `l: { r: { kind: drying-oven, material: adhesive-a, ${extra} signals: { metal: ${cel('m')}, loaded: ${signalLine('l', '1')}, conveyor: ${signalLine('c', '1')}, zone-1-air: ${cel('a')} }, rules: ${rules} } }`,
      {},
      sheet,
    );
  test('is not armed without the data sheet, and says what it needs', () => {
    const site = oven();
    expect(readiness(site, 'under-dried')).toBe('not-armed');
    expect(readiness(site, 'over-baked')).toBe('not-armed');
    expect(site.rules.find(({ id }) => id === 'l/r/under-dried')!.needs.slice(0, 2)).toEqual([
      'the metal temperature at which the coat dries (dry_above of the material sheet)',
      'the least time at or above it (dry_for of the material sheet)',
    ]);
    expect(site.plan.runs).toMatchObject([{ station: 'l/r', least: null, peak: null, most: null }]);
  });
  test('takes both sides from it, and follows its loads by them', () => {
    const site = oven('', '{ under-dried: { dwell: 25 min } }', {
      dry_above: '65 Cel',
      dry_for: '10 min',
      bake_upper: '90 Cel',
      bake_upper_for: '5 min',
    });
    expect(site.problems).toEqual([]);
    expect(readiness(site, 'under-dried')).toBe('armed');
    expect(readiness(site, 'over-baked')).toBe('armed');
    expect(site.plan.runs).toMatchObject([
      { least: { fromC: 65, ms: 600_000 }, peak: null, most: { fromC: 90, ms: 300_000 } },
    ]);
  });
  test('without a dwell it arms, and coverage says what that costs', () => {
    const site = oven('', '{ under-dried: { above: 65 Cel, above_for: 10 min } }');
    expect(readiness(site, 'under-dried')).toBe('armed');
    expect(site.coverage.stations[0]!.unconfirmed).toContainEqual({
      rule: 'l/r/under-dried',
      numbers: [expect.objectContaining({ setting: 'dwell', written: null })],
      needs: [expect.stringContaining('dwell), without which it is told only at the exit')],
    });
  });
  test('a peak alone is enough for the other side', () => {
    expect(readiness(oven('', '{ over-baked: { peak: 100 Cel } }'), 'over-baked')).toBe('armed');
  });
  test('heated by infrared: seconds for a stopped conveyor, and air says nothing', () => {
    const delay = (site: Site) =>
      site.rules
        .find(({ id }) => id === 'l/r/conveyor-stopped')!
        .settings.find(({ setting }) => setting === 'on_delay')?.written;
    expect(delay(oven())).toBe('60 s');
    expect(delay(oven('heating: convection,'))).toBe('60 s');
    const infrared = oven('heating: infrared,');
    expect(delay(infrared)).toBe('10 s');
    expect(infrared.rules.some(({ id }) => id === 'l/r/zone-1-high')).toBe(false);
    expect(
      infrared.coverage.stations[0]!.moot.find(({ rule }) => rule === 'l/r/zone-1-high')?.why,
    ).toMatch(/^Infrared heats the part and not the air/);
  });
  test('the oven’s own word for a rule wins over what follows', () => {
    const site = oven('heating: infrared,', '{ conveyor-stopped: { on_delay: 5 s } }');
    expect(
      site.rules
        .find(({ id }) => id === 'l/r/conveyor-stopped')!
        .settings.find(({ setting }) => setting === 'on_delay')?.written,
    ).toBe('5 s');
  });
  test('another heating is refused', () => {
    expect(() => oven('heating: microwave,')).toThrow();
  });
});
