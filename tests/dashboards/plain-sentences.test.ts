/** Sentences as a fitter reads them: spans in words, signals by their names, limits with when they are judged. */
import { describe, expect, test } from 'vitest';
import { notJudgedText } from '../../dashboards/draw/limit-words.ts';
import { valueText } from '../../dashboards/text/difference.ts';
import { spokenId } from '../../dashboards/text/names.ts';
import { plainQuantity, quantity } from '../../dashboards/text/quantity.ts';
import { rule, signal } from '../agent/web/fake-ports.ts';

const spaced = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('seconds', () => {
  test.each([
    [604_800, '7 d'],
    [543_180, '6.3 d'],
    [43_200, '12 h'],
    [-600, '−10 min'],
    [12.5, '12.5 s'],
  ])('%d s is %s', (seconds, words) => {
    expect(spaced(quantity(seconds, 's', 0.1))).toBe(words);
    expect(spaced(plainQuantity(seconds, 's'))).toBe(words);
  });
  test('a drum that keeps longer than is worked out has more', () => {
    const left = { signal: 'drum-time-left', unit: 's', written_unit: 's', resolution: 600 };
    expect(spaced(valueText(604_800, left))).toBe('more than 7 d');
    expect(spaced(valueText(86_400, left))).toBe('24 h');
  });
});

test('ids within a sentence are said as their names', () => {
  expect(spokenId('bushings-1/oven-1/zone-1-air and bushings-1/oven-1/zone-2-air')).toBe(
    'Oven 1 zone 1 air and Oven 1 zone 2 air',
  );
  expect(spokenId('Stop it and/or call. See 1/2 of https://a.b/c/d.')).toBe(
    'Stop it and/or call. See 1/2 of https://a.b/c/d.',
  );
});

test('a limit that is not judged now says when it is', () => {
  const margin = {
    ...signal('margin'),
    judged_at: [{ rule: rule.id, side: 'low' as const, limit: 10 }],
  };
  const gated = {
    ...rule,
    gates: [{ signal: 'l/o/thickness', low: 10, high: null, unit: 'mm' }],
  };
  expect(spaced(notJudgedText('low limit 10 °C', margin, new Map([[rule.id, gated]])))).toBe(
    'low limit 10 °C; not judged now: only while Thickness 10 mm or more',
  );
});
