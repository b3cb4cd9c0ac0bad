import { describe, expect, test } from 'vitest';
import type { SettingsProblem } from '#rules/kinds/settings.ts';
import { settingsReader } from '#rules/kinds/settings-reader.ts';

function reading(written: Record<string, unknown>, unit = 'Cel', digits: number | null = 1) {
  const problems: SettingsProblem[] = [];
  return {
    read: settingsReader(written, { unit, digits, expectEveryMs: 60_000 }, problems),
    problems,
  };
}

describe('limits', () => {
  test.each([
    ['7 Cel', 'Cel', 7],
    ['280.15 K', 'Cel', 7],
    ['44.6 [degF]', 'Cel', 7],
    ['5.5 bar', 'kPa', 550],
    ['3 mbar', 'kPa', 0.3],
    ['30 {rpm}', '/min', 30],
    ['0.5 Hz', '/min', 30],
    ['55 %{RH}', '%', 55],
    ['25.4 um', 'mm', 0.0254],
    ['1 [mil_i]', 'mm', 0.0254],
  ])('%s for a signal in %s is %d', (text, unit, value) => {
    const { read, problems } = reading({ low: text }, unit);
    expect(read.limit('low')).toBe(value);
    expect(problems).toEqual([]);
  });

  test('of a margin are differences, in any temperature unit', () => {
    for (const [text, value] of [
      ['3 K', 3],
      ['3 Cel', 3],
      ['9 [degF]', 5],
      ['9 [degF]{difference}', 5],
    ] as const) {
      const { read, problems } = reading({ low: text }, 'K');
      expect(read.limit('low'), text).toBe(value);
      expect(problems).toEqual([]);
    }
  });

  test('of another dimension are refused with path, problem and fix', () => {
    const { read, problems } = reading({ low: '7 bar' });
    expect(read.limit('low')).toBeNull();
    expect(problems).toEqual([
      {
        path: ['low'],
        problem: 'limit in bar for a temperature (Cel)',
        fix: 'write it as "7 Cel"',
      },
    ]);
  });

  test('of a temperature are never written as a difference', () => {
    const { read, problems } = reading({ low: '7 K{difference}' });
    expect(read.limit('low')).toBeNull();
    expect(problems[0]).toMatchObject({
      problem: 'limit in K{difference} for a temperature (Cel)',
    });
  });

  test('without a unit are refused, as text or as a number', () => {
    for (const bare of ['7', 7]) {
      const { read, problems } = reading({ low: bare }, 'kPa');
      expect(read.limit('low')).toBeNull();
      expect(problems).toEqual([
        { path: ['low'], problem: '7 has no unit', fix: 'write it as "7 kPa"' },
      ]);
    }
  });

  test('absent are null and no problem', () => {
    const { read, problems } = reading({ high: null, low_low: undefined });
    expect([read.limit('low'), read.limit('high'), read.limit('low_low')]).toEqual([
      null,
      null,
      null,
    ]);
    expect(read.has('high')).toBe(false);
    expect(read.limit('toString')).toBeNull();
    expect(problems).toEqual([]);
  });
});

describe('differences', () => {
  test.each([
    ['1 K', 'Cel', 1],
    ['1 Cel', 'Cel', 1],
    ['3 [degF]', 'Cel', 1.66666666667],
    ['1.8 [degF]{difference}', 'Cel', 1],
    ['0.2 bar', 'kPa', 20],
    ['0 K', 'K', 0],
  ])('%s of a signal in %s is %d, without any offset', (text, unit, value) => {
    const { read, problems } = reading({ deadband: text }, unit);
    expect(read.difference('deadband', 9)).toBe(value);
    expect(problems).toEqual([]);
  });

  test('absent give the fallback, refused too, with a problem', () => {
    const { read, problems } = reading({ deadband: '1 bar', other: '-2 K' });
    expect(read.difference('absent', 0.5)).toBe(0.5);
    expect(read.difference('deadband', 0.5)).toBe(0.5);
    expect(read.difference('other', 0.5)).toBe(0.5);
    expect(problems).toEqual([
      {
        path: ['deadband'],
        problem: 'difference in bar for a temperature (Cel)',
        fix: 'write it as "1 Cel"',
      },
      {
        path: ['other'],
        problem: 'a difference cannot be negative (-2 K)',
        fix: 'write it as "2 K"',
      },
    ]);
  });
});

describe('the rest', () => {
  test('durations, numbers and flags, each with its fallback', () => {
    const { read, problems } = reading({ on_delay: '10 min', points: 16, latching: true });
    expect(read.duration('on_delay', 1)).toBe(600_000);
    expect(read.duration('off_delay', 1)).toBe(1);
    expect(read.number('points', 3)).toBe(16);
    expect(read.number('others', 3)).toBe(3);
    expect(read.flag('latching', false)).toBe(true);
    expect(read.flag('other', true)).toBe(true);
    expect(problems).toEqual([]);
  });

  test('every problem is collected, one a field', () => {
    const { read, problems } = reading({
      low: '7 bar',
      high: '8 C',
      deadband: {},
      on_delay: '10',
      points: '16',
      ratio: Number.NaN,
      latching: 'yes',
    });
    read.limit('low');
    read.limit('high');
    read.difference('deadband', 0);
    expect(read.duration('on_delay', 5)).toBe(5);
    expect(read.number('points', 3)).toBe(3);
    expect(read.number('ratio', 3)).toBe(3);
    expect(read.flag('latching', false)).toBe(false);
    read.report({ path: ['low'], problem: 'low above high', fix: 'swap them' });
    expect(problems.map(({ path }) => path[0])).toEqual([
      'low',
      'high',
      'deadband',
      'on_delay',
      'points',
      'ratio',
      'latching',
      'low',
    ]);
    for (const { problem, fix } of problems) expect([problem, fix]).not.toContain('');
  });

  test("resolution and promise are the signal's", () => {
    expect(reading({}).read.resolution).toBe(0.1);
    expect(reading({}, 'Cel', 0).read.resolution).toBe(1);
    expect(reading({}, 'Cel', null).read.resolution).toBe(0);
    expect(reading({}).read.expectEveryMs).toBe(60_000);
  });

  test('a signal unit that is not canonical is a bug, not a setting', () => {
    expect(() => reading({}, '[degF]')).toThrow(RangeError);
  });
});
