/** What a site may say of residue that lies thick, and of what kind it is. */
import { describe, expect, test } from 'vitest';
import { sheetWritten } from '#rules/material/sheet.ts';
import { compiled, signalLine } from './site.ts';

const cel = (topic: string) => signalLine(topic, 'Cel');
const residue = (extra = '', rules = '{}') =>
  `l: { r: { kind: residue, material: adhesive-a, ${extra} signals: { surface: ${cel('s')}, air: ${cel('a')} }, rules: ${rules} } }`;
type Site = ReturnType<typeof compiled>;
const card = (site: Site, rule: string) => site.rules.find(({ id }) => id === `l/r/${rule}`);
const limitOf = (site: Site, rule: string): number => {
  const written = card(site, rule)?.settings.find(({ setting }) => setting === 'high')?.written;
  return Number(String(written).replace(' Cel', ''));
};
const said = (site: Site) =>
  site.problems.map(({ path, problem }) => `${path.join('.')}: ${problem}`);
const thick = (thickness: string, rules = '{}', sheet = {}, extra = '') =>
  compiled(residue(`residue_thickness: ${thickness}, ${extra}`, rules), {}, sheet);

describe('residue that lies thick', () => {
  test('lowers the limit by the least favourable energy, and its warnings follow', () => {
    const site = thick('50 mm');
    expect(site.problems).toEqual([]);
    expect(limitOf(site, 'at-limit')).toBeCloseTo(59, 0);
    expect(limitOf(site, 'act')).toBeCloseTo(limitOf(site, 'at-limit') - 10, 6);
    expect(limitOf(site, 'early')).toBeCloseTo(limitOf(site, 'at-limit') - 20, 6);
    expect(limitOf(site, 'at-limit') * 10).toBe(Math.floor(limitOf(site, 'at-limit') * 10));
    expect(card(site, 'at-limit')!.readiness).toBe('armed-limit-unconfirmed');
  });
  test.each(['1 mm', '10 mm', '200 um'])('%s keeps the limit: thin residue raises none', (thin) => {
    expect(limitOf(thick(thin), 'at-limit')).toBe(112);
  });
  test('lowers what the data sheet says too', () => {
    const sheet = { residue_limit: '100 Cel' };
    expect(limitOf(thick('5 mm', '{}', sheet), 'at-limit')).toBe(100);
    expect(limitOf(thick('50 mm', '{}', sheet), 'at-limit')).toBeLessThan(
      limitOf(thick('50 mm'), 'at-limit'),
    );
  });
  test('a limit of the site’s own may not stand above it without a basket test', () => {
    const own = '{ at-limit: { high: 80 Cel } }';
    expect(said(thick('50 mm', own))).toEqual([
      expect.stringMatching(
        /^lines\.l\.r\.rules\.at-limit\.high: 80 Cel lies above 58\.\d Cel, and no basket test/,
      ),
    ]);
    expect(said(thick('5 mm', own))).toEqual([]);
    expect(said(thick('50 mm', '{ at-limit: { high: 50 Cel } }'))).toEqual([]);
    const basket =
      'basket_test: { report: "BT-7", signed_by: EHS, baskets: [{ side: 50 mm, ignition: 120 Cel }, { side: 75 mm, ignition: 110.5 Cel }, { side: 100 mm, ignition: 103 Cel }, { side: 200 mm, ignition: 88 Cel }] }, ';
    const proven = thick('50 mm', own, { residue_kind: 'oxidising' }, basket);
    expect(said(proven)).toEqual([]);
    expect(limitOf(proven, 'at-limit')).toBe(80);
  });
  test('nor may a warning stand above the limit it warns of', () => {
    expect(said(thick('50 mm', '{ early: { high: 60 Cel } }'))).toEqual([
      expect.stringContaining('rules.early.high: 60 Cel lies above 38.'),
    ]);
  });
  test('where the place runs past the lowered limit, cleaning is the only barrier', () => {
    const site = thick('50 mm', '{}', {}, 'process_temperature: 75 Cel, ');
    const [coverage] = site.coverage.stations;
    expect(coverage!.unwatched.find(({ hazard }) => hazard === 'ignition')?.why).toBe(
      'No temperature margin here. Cleaning is the only barrier.',
    );
    expect(card(site, 'cleaning-late')!.class.highlyManaged).toBe(true);
  });
  test('a rule that only looks above 80 °C means nothing where the limit lies below', () => {
    expect(thick('50 mm').coverage.stations[0]!.moot).toEqual([
      { rule: 'l/r/approaching', why: expect.stringContaining('as an oven heats up') },
    ]);
  });
  test.each([
    ['5 Cel', '5 Cel is no thickness of residue'],
    ['0 mm', '0 mm is no thickness of residue'],
    ['3 m', '3 m is no thickness of residue'],
  ])('%s is refused', (text, problem) => {
    expect(said(thick(text))).toEqual([`lines.l.r.residue_thickness: ${problem}`]);
  });
});

describe('cleaning and waste', () => {
  test('are judged by what people write down, with numbers the site confirms', () => {
    const site = compiled(residue());
    for (const [rule, limit, mark] of [
      ['cleaning-late', '7 d', 'l/r/cleaned'],
      ['bin-unemptied', '8 h', 'l/r/bin-emptied'],
    ] as const) {
      const found = card(site, rule)!;
      expect(found.readiness).toBe('armed-limit-unconfirmed');
      expect(found.settings.find(({ setting }) => setting === 'limit')?.written).toBe(limit);
      expect(found.marks).toEqual([mark]);
      expect(found.class.highlyManaged).toBe(true);
    }
  });
});

describe('what kind of residue it is', () => {
  const facts = (residue_kind?: 'oxidising' | 'self-reactive' | 'unknown') =>
    card(
      compiled(residue(), {}, residue_kind === undefined ? {} : { residue_kind }),
      'self-heating',
    )!.facts;
  test('unknown behaves as the worse', () => {
    expect(facts()).toEqual(facts('unknown'));
    expect(facts()).toEqual(facts('self-reactive'));
    expect(facts().smother).toMatchObject({
      kind: 'text',
      text: expect.stringContaining('may not'),
    });
    expect(facts('oxidising').smother).not.toEqual(facts().smother);
  });
  test('another word is refused', () => {
    const written = { name: 'A', source: 'made for this test', residue_kind: 'explosive' };
    expect(sheetWritten.safeParse(written).success).toBe(false);
  });
});
