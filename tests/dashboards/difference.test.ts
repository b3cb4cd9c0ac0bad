/** A difference of temperatures is never said as how warm something is; its limit stands where it is judged. */
import { describe, expect, test } from 'vitest';
import { limitsText } from '../../dashboards/draw/limit-words.ts';
import { excessText, valueText } from '../../dashboards/text/difference.ts';
import { rule, signal } from '../agent/web/fake-ports.ts';

const spaced = (text: string): string => text.replaceAll('\u00a0', ' ');
const of = (name: string) => ({ signal: name, unit: 'K', written_unit: 'K', resolution: 0.1 });

describe('as people read it', () => {
  test.each([
    ['self-heat-excess', 0.6, '0.6 °C hotter than the air'],
    ['self-heat-excess-floor', 15.2, '15.2 °C hotter than the air'],
    ['self-heat-excess', -1.2, '1.2 °C cooler than the air'],
    ['bin-excess', 10, '10.0 °C hotter than the air'],
    ['ignition-margin-floor', -7, '7.0 °C past where residue may light itself'],
    ['ignition-margin-floor', 7, '7.0 °C below where residue may light itself'],
    ['dew-margin', 2.5, '2.5 °C above the dew point'],
    ['own', 3, 'a difference of 3.0 °C'],
  ])('%s of %d K', (name, value, words) => {
    expect(spaced(valueText(value, of(name)))).toBe(words);
  });
  test('a temperature stays one', () => {
    const air = { signal: 'air', unit: 'Cel', written_unit: 'Cel', resolution: 0.1 };
    expect(spaced(valueText(21.4, air))).toBe('21.4 °C');
  });
  test('of a surface', () =>
    expect(spaced(excessText(0.6, 0.1))).toBe('0.6 °C hotter than the air'));
});

describe('the limit of a difference', () => {
  const floor = { ...signal('floor'), judged_at: [] };
  const none = { low: [], high: [] };
  const heating = {
    ...rule,
    id: 'l/o/self-heating-floor',
    kind: 'self-heat',
    signals: ['l/o/self-heat-excess-floor', floor.id],
    settings: { excess: '5 K', rise: '1 K' },
  };
  test('is named with the rule that has it', () => {
    const rules = new Map([[heating.id, heating]]);
    expect(spaced(limitsText(floor, none, null, rules))).toBe(
      'Heating by itself: floor: limit 5 °C of difference',
    );
  });
  test('of a rule that does not run, and of none, there is none', () => {
    const idle = new Map([[heating.id, { ...heating, readiness: 'not-armed' as const }]]);
    expect(limitsText(floor, none, null, idle)).toBe('no limits');
    expect(limitsText(floor, none, null, new Map())).toBe('no limits');
  });
});
