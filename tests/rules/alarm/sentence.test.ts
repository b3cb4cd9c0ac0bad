/** Sentences with a margin read right on either side of nothing; a thing is named once. */
import { describe, expect, test } from 'vitest';
import { type Subject, sayAlarm } from '#rules/alarm/say.ts';
import { sentenceFor } from '#rules/alarm/sentence.ts';
import { germanOf } from '#rules/german/all.ts';
import { selfHeat } from '#rules/kinds/self-heat.ts';
import { stationKinds } from '#rules/stations/all.ts';

const rules = [...stationKinds.values()].flatMap((kind) =>
  kind.rules.map((rule) => ({ of: `${kind.name} ${rule.name}`, rule })),
);

const subject = (unit: string): Subject => ({
  station: 'a/b',
  signal: 'a/b/c',
  unit,
  digits: 1,
  facts: { target: { kind: 'text', text: '35 %' } },
  timezone: 'UTC',
  container: null,
});
const said = (of: string, value: number, unit: string): string => {
  const { label } = rules.find((each) => each.of === of)!.rule;
  const evidence = { value, limit: 10, sinceMs: 0, item: 'rack-22' };
  return sayAlarm(label, () => '', subject(unit), evidence, 60_000);
};

test('a rise that nobody knows is not said, in either language', () => {
  const { sentence } = rules.find(({ of }) => of.startsWith('residue self-heat'))!.rule.label;
  const says = (template: string): string =>
    sayAlarm(
      { ...rules[0]!.rule.label, sentence: template },
      () => '',
      subject('K'),
      {
        ...{ value: 6, limit: 5, sinceMs: 0, input: 0 },
      },
      60_000,
    );
  expect(says(sentence!)).toBe(
    'a/b/c: the surface is 6.0 K hotter than the air beside it with the heat steady or off.',
  );
  expect(says(germanOf(sentence!)!)).toBe(
    'a/b/c: Die Oberfläche ist um 6.0 K heißer als die Luft daneben, bei gleichbleibender oder abgeschalteter Heizung.',
  );
  for (const own of [selfHeat.sentence({}), germanOf(selfHeat.sentence({}))!])
    expect(says(own)).not.toContain('unknown');
});

/** A margin, and words that say that so much of it is left. */
const saysLeft =
  /\{\$value\}[^,;]*\b(left|room(?!’)|remain\w*|to spare|to go)\b|\b(left|room(?!’)|remain\w*)\b[^,;]*\{\$value\}/;
const margins = rules.filter(({ rule }) => saysLeft.test(rule.label.sentence ?? ''));

describe('what is left, at and past nothing', () => {
  test.each([
    [26.5, 'a/b/c: 26.5 K left to where residue as thick as gauged here may light itself,'],
    [0, 'a/b/c: 0.0 K left to where residue as thick as gauged here may light itself,'],
    [-26.5, 'a/b/c: 26.5 K past where residue as thick as gauged here may light itself,'],
  ])('thick residue, %d', (value, begins) =>
    expect(said('residue act-thick', value, 'K').startsWith(begins)).toBe(true),
  );
  test.each([
    [0.5, 'room to the limit 0.5 %, counting'],
    [0, 'room to the limit 0.0 %, counting'],
    [-0.5, 'from 35 %; 0.5 % past the limit, counting'],
  ])('solids, %d', (value, words) =>
    expect(said('dip-tank bath-solids-density', value, '%')).toContain(words),
  );

  test('of every rule of every station: nothing less than nothing is left', () => {
    expect(margins.length).toBeGreaterThanOrEqual(2);
    for (const { of } of margins) {
      expect(said(of, 4, 'K'), of).toMatch(/4\.0 K/);
      expect(said(of, 0, 'K'), of).toMatch(/0\.0 K/);
      const past = said(of, -4, 'K');
      expect(past, of).toContain('4.0 K past ');
      expect(past, of).not.toMatch(/-4|−4|\bleft\b|\broom\b/);
    }
  });
});

test('a rack called rack-22 is rack 22, in every sentence that names one', () => {
  const named = rules.filter(({ rule }) => rule.label.sentence?.includes('ack {$item}'));
  expect(named.length).toBeGreaterThan(3);
  for (const { of } of named) {
    expect(said(of, 4, 's'), of).toMatch(/\b[Rr]ack 22\b/);
    expect(said(of, 4, 's'), of).not.toMatch(/rack-22/);
  }
});

describe('in German too', () => {
  const german = (of: string, value: number): string => {
    const { sentence } = rules.find((each) => each.of === of)!.rule.label;
    return sentenceFor(germanOf(sentence!)!, { value, item: 'rack-22' });
  };

  test('nothing less than nothing is left', () => {
    for (const { of } of margins) {
      expect(german(of, 4), of).toMatch(/noch \{\$value\} bis|Abstand zum Grenzwert \{\$value\}/);
      expect(german(of, -4), of).toMatch(/\{\$past\} jenseits (davon|des)/);
      expect(german(of, -4), of).not.toMatch(/\bnoch\b|Abstand|\{\$value\}/);
    }
  });

  test('a thing is named once', () => {
    const named = rules.filter(({ rule }) => rule.label.sentence?.includes('ack {$item}'));
    for (const { of } of named) expect(german(of, 4), of).toContain('Gestell {$itemname}');
    expect(sentenceFor('Gestell {$item}', { item: 'Gestell 7' })).toBe('Gestell {$itemname}');
    expect(sentenceFor('Los {$item}', { item: 'A7' })).toBe('Los {$item}');
  });
});
