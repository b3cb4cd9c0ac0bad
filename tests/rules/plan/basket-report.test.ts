/** A basket test in the site file: it lowers by itself, raises only as far as it proves, and is refused in words. */
import { describe, expect, test } from 'vitest';
import { basketIgnitionC, fitBaskets } from '#rules/process/basket-test.ts';
import { compiled, signalLine } from './site.ts';

const cel = (topic: string) => signalLine(topic, 'Cel');
type Pair = readonly [side: string, ignition: string];
/** As published for an illustration: half-sides of 25, 50 and 100 mm. */
const safe: readonly Pair[] = [
  ['50 mm', '168 Cel'],
  ['100 mm', '149 Cel'],
  ['0.2 m', '269.6 [degF]'],
];
/** A residue that lights so early that the limit must come down. */
const hot: readonly Pair[] = [
  ['50 mm', '92 Cel'],
  ['75 mm', '84 Cel'],
  ['100 mm', '78 Cel'],
  ['200 mm', '65 Cel'],
];
const site = (
  baskets: readonly Pair[] | null,
  {
    rules = '{}',
    sheet = { residue_kind: 'oxidising' as const },
    extra = '',
  }: { rules?: string; sheet?: object; extra?: string } = {},
) => {
  const list = baskets?.map(([side, ignition]) => `{ side: "${side}", ignition: "${ignition}" }`);
  const test = `basket_test: { report: BT-7, signed_by: EHS${list === undefined ? '' : `, baskets: [${list.join(', ')}]`} }, `;
  const signals = `{ surface: ${cel('s')}, air: ${cel('a')} }`;
  return compiled(
    `l: { r: { kind: residue, material: adhesive-a, ${extra}${test} signals: ${signals}, rules: ${rules} } }`,
    {},
    sheet,
  );
};
type Site = ReturnType<typeof site>;
const high = (of: Site, rule = 'at-limit') => {
  const card = of.rules.find(({ id }) => id === `l/r/${rule}`)!;
  const { written, basis, confirmed } = card.settings.find(({ setting }) => setting === 'high')!;
  return { c: Number(String(written).replace(' Cel', '')), basis, confirmed };
};
const said = (of: Site) => of.problems.map(({ path, problem }) => `${path.join('.')}: ${problem}`);

/** What the regression itself gives for a layer, at its low side. */
function lowC(baskets: readonly (readonly [sideMm: number, c: number])[], layerMm: number): number {
  const fit = fitBaskets(
    baskets.map(([side, ignitionC]) => ({ shape: 'cube', halfSizeM: side / 2_000, ignitionC })),
  );
  if ('refused' in fit) throw new Error(fit.refused);
  return basketIgnitionC(fit, 'slab', layerMm / 1_000)!.lowC;
}
const hotMm = [
  [50, 92],
  [75, 84],
  [100, 78],
  [200, 65],
] as const;

describe('lowers by itself', () => {
  test('to the low side of its interval for the thickness that lies here; its warnings follow', () => {
    const at = site(hot, { extra: 'residue_thickness: 10 mm, ' });
    expect(said(at)).toEqual([]);
    expect(high(at).c).toBeCloseTo(Math.floor(lowC(hotMm, 10) * 10) / 10, 6);
    expect(high(at).c).toBeLessThan(112);
    expect(high(at, 'act').c).toBeCloseTo(high(at).c - 10, 6);
    expect(high(at, 'early').c).toBeCloseTo(high(at).c - 20, 6);
    expect(high(at)).toMatchObject({
      confirmed: true,
      basis: {
        mark: 'SITE',
        source: 'EN 15188',
        note: expect.stringContaining('BT-7, signed by EHS'),
      },
    });
    expect(high(at, 'approaching').basis.note).toContain('BT-7');
  });
  test('unconfirmed where nobody gave the thickness', () => {
    expect(high(site(hot))).toMatchObject({ c: high(site(hot)).c, confirmed: false });
    expect(high(site(hot)).c).toBeLessThan(112);
  });
  test('what a data sheet says too, and never raises what it says', () => {
    const sheet = { residue_kind: 'oxidising', residue_limit: '105 Cel' };
    expect(high(site(hot, { sheet })).basis.note).toContain('BT-7');
    expect(high(site(hot, { sheet })).c).toBe(high(site(hot)).c);
    expect(high(site(safe, { sheet }))).toMatchObject({ c: 105, basis: { mark: 'DS' } });
  });
  test('and thick residue stays as low as the law takes it', () => {
    const thick = 'residue_thickness: 50 mm, ';
    expect(high(site(safe, { extra: thick })).c).toBeCloseTo(59, 0);
    expect(high(site(hot, { extra: thick })).c).toBeCloseTo(59, 0);
  });
  test('whatever kind of residue it is', () => {
    expect(high(site(hot, { sheet: {} })).c).toBe(high(site(hot)).c);
  });
});

describe('raises nothing by itself, and only as far as it proves', () => {
  test('no limit moves where the baskets are safer', () => {
    expect(high(site(safe))).toMatchObject({ c: 112, confirmed: false, basis: { mark: 'CP' } });
  });
  test('a limit of the site’s own up to its low side, at no less than the smallest basket', () => {
    const most =
      Math.floor(
        lowC(
          [
            [50, 168],
            [100, 149],
            [200, 132],
          ],
          25,
        ) * 10,
      ) / 10;
    const at = site(safe, { rules: `{ at-limit: { high: ${most} Cel } }` });
    expect(said(at)).toEqual([]);
    expect(high(at)).toMatchObject({ c: most, basis: { source: 'EN 15188' } });
    expect(said(site(safe, { rules: `{ at-limit: { high: ${most + 0.1} Cel } }` }))).toEqual([
      expect.stringMatching(
        /^lines\.l\.r\.rules\.at-limit\.high: .* and above the 1\d\d(\.\d)? Cel/,
      ),
    ]);
    expect(said(site(safe, { rules: `{ early: { high: ${most - 19.9} Cel } }` }))).toHaveLength(1);
  });
  test('not without its baskets', () => {
    expect(said(site(null, { rules: '{ at-limit: { high: 120 Cel } }' }))).toEqual([
      expect.stringContaining('gives no baskets'),
    ]);
  });
  test.each([{}, { residue_kind: 'unknown' }, { residue_kind: 'self-reactive' }])(
    'nor for residue that may decompose: %j',
    (sheet) => {
      expect(said(site(safe, { sheet, rules: '{ at-limit: { high: 120 Cel } }' }))).toEqual([
        expect.stringContaining('answers oxidation alone'),
      ]);
    },
  );
});

describe('is refused in words', () => {
  const three = (...sides: string[]) => sides.map((side, i): Pair => [side, `${150 - 10 * i} Cel`]);
  test.each([
    ['two sizes', three('50 mm', '100 mm'), 'baskets: the basket test has fewer than three sizes'],
    ['none', [], 'baskets: the basket test has fewer than three sizes'],
    [
      'sizes too close',
      three('50 mm', '55 mm', '100 mm'),
      'baskets: sizes of the basket test lie too close',
    ],
    ['metres for millimetres', three('50 m', '100 m', '200 m'), 'baskets: a basket lies outside'],
    [
      'bigger ones that light later',
      three('200 mm', '100 mm', '50 mm'),
      'baskets: the baskets do not fall on a line',
    ],
    [
      'no length',
      [['50 Cel', '150 Cel'], ...three('100 mm', '200 mm')],
      'baskets.0.side: 50 Cel is no side of a cube',
    ],
    [
      'no temperature',
      [['50 mm', '150 mm'], ...three('100 mm', '200 mm')],
      'baskets.0.ignition: 150 mm is no temperature of ignition',
    ],
  ] as const)('%s', (_, baskets, problem) => {
    const at = site(baskets as readonly Pair[]);
    expect(said(at)).toEqual([expect.stringContaining(`lines.l.r.basket_test.${problem}`)]);
    // What cannot be read changes no limit.
    expect(high(at).c).toBe(112);
  });
  test('at a station that has no residue', () => {
    const at = compiled(
      `l: { m: { kind: drum-mixer, basket_test: { report: BT-7, signed_by: EHS }, signals: {} } }`,
    );
    expect(said(at)).toEqual([
      'lines.l.m.basket_test: a basket test says nothing at a station of the kind drum-mixer',
    ]);
  });
});
