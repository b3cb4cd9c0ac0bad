/** Words as a stranger reads them: days, items, differences, ends of rulers, do-nots in one language. */
import { afterEach, describe, expect, test, vi } from 'vitest';
import { rulerDisplay } from '../../dashboards/draw/ruler-display.ts';
import { type Marks, scaleOfLimits } from '../../dashboards/draw/scale.ts';
import { askedText } from '../../dashboards/parts/outcome.tsx';
import { clock } from '../../dashboards/text/clock.ts';
import { speak } from '../../dashboards/text/language.ts';
import { itemText, ruleName } from '../../dashboards/text/names.ts';
import { writtenQuantity } from '../../dashboards/text/quantity.ts';
import { say } from '../../dashboards/text/say.ts';

vi.stubGlobal('document', { documentElement: { dataset: {}, lang: 'en' } });
afterEach(() => speak('en'));
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('a weekday is one of the six days beside today', () => {
  // Monday 30 November 2026.
  const now = Date.parse('2026-11-30T23:14Z');
  test.each([
    ['2026-12-07T23:05Z', '7 Dec 23:05'],
    ['2026-12-07T23:12Z', '7 Dec 23:12'],
    ['2026-12-06T23:12Z', 'Sun 23:12'],
    ['2026-12-01T00:05Z', 'Tue 00:05'],
    ['2026-11-24T23:12Z', 'Tue 23:12'],
    ['2026-11-23T23:59Z', '23 Nov 23:59'],
    ['2026-11-30T23:05Z', '23:05'],
  ])('%s is %s', (at, text) => expect(clock(Date.parse(at), now)).toBe(text));
  test('in German too', async () => {
    await speak('de');
    expect(clock(Date.parse('2026-12-07T23:05Z'), now)).toBe('7. Dez. 23:05');
  });
});

test('a rack is a rack once, in either language', async () => {
  const items = ['rack-22', 'Rack 7', 'container-drum-3', 'R-12'];
  expect(items.map(itemText)).toEqual(['Rack 22', 'Rack 7', 'Container drum-3', 'R-12']);
  await speak('de');
  expect(itemText('rack-22')).toBe('Gestell 22');
});

test('what is stacked is a stack, no duct', async () => {
  expect(ruleName('l/s/stack-hot')).toBe('Stack hot');
  await speak('de');
  expect(ruleName('l/s/stack-hot')).toBe('Stapel heiß');
});

test('units as people read them; a difference says that it is one', () => {
  expect(plain(writtenQuantity('deadband', '2 /min'))).toBe('2 rpm');
  expect(plain(writtenQuantity('low', '30 /min'))).toBe('30 rpm');
  expect(say('ofDifference', { value: '5 °C' })).toBe('5 °C of difference');
});

test('since when, when it went back, and that it is past its limit again', () =>
  expect(say('pastAgain', { since: '22:41', clock: '22:56', limit: '5 °C of difference' })).toBe(
    'Since 22:41. It went back 22:56, and is past 5 °C of difference again.',
  ));

test('of an alarm that was passed on: who is asked, or that somebody must be fetched', async () => {
  const asked = (people: string[], can_be_told: boolean) => askedText({ people, can_be_told });
  expect(asked(['Anna', 'Ben'], true)).toBe('Passed on. Asked now: Anna, Ben.');
  expect(asked([], false)).toBe('Nobody can be told. Go and fetch somebody.');
  expect(asked([], true)).toBe('Nobody else is told of it now. Go and fetch somebody.');
  await speak('de');
  expect(asked([], false)).toBe('Niemand ist zu erreichen. Holen Sie selbst jemanden.');
});

describe('a ruler without a reading', () => {
  test.each<[string, Marks, [number, number]]>([
    ['one low limit', { low: [10], high: [] }, [0, 15]],
    ['one high limit', { low: [], high: [100] }, [0, 150]],
    ['two of one side', { low: [], high: [100, 112] }, [0, 150]],
    ['a window', { low: [18], high: [27] }, [15, 30]],
    ['a narrow window', { low: [99.6], high: [101.2] }, [99, 102]],
    ['a deep one', { low: [], high: [-20] }, [-25, 0]],
    ['nothing as a limit', { low: [0], high: [] }, [-1, 1]],
    ['a week', { low: [], high: [7] }, [0, 10]],
    ['no limit', { low: [], high: [] }, [-1, 1]],
  ])('%s', (_, marks, [from, to]) => {
    const scale = scaleOfLimits(marks);
    expect(scale).toEqual({ from, to });
    for (const limit of [...marks.low, ...marks.high]) {
      expect(limit).toBeGreaterThanOrEqual(scale.from);
      expect(limit).toBeLessThanOrEqual(scale.to);
    }
  });
  test.each([
    [[604_800], 'd', 7],
    [[7_200], 'h', 2],
    [[600], 'min', 10],
    [[90], 's', 90],
  ] as const)('a time of %j is drawn in %s', (seen, symbol, shown) => {
    const how = rulerDisplay({ unit: 's', written_unit: 's' }, seen);
    expect([how.symbol, how.of(seen[0])]).toEqual([symbol, shown]);
  });
});
