/** What somebody who fits sensors to an old line is likely to get wrong: each says what, where, how to mend. */
import { describe, expect, test } from 'vitest';
import { readSiteText } from '#agent/site/read-site.ts';
import { pathText } from '#rules/site/problem.ts';

const signal = (settings: string): string => `site: works
timezone: Europe/Dublin
lines:
  m:
    s:
      kind: custom
      signals:
        t:
${settings
  .split('\n')
  .map((line) => `          ${line}`)
  .join('\n')}
`;
const sound = 'topic: t\npayload: { kind: plain }\nunit: Cel';
const withPayload = (payload: string): string => signal(`topic: t\npayload: ${payload}\nunit: Cel`);
const withUnit = (unit: string): string =>
  signal(`topic: t\npayload: { kind: plain }\nunit: ${unit}`);
const with_ = (more: string): string => signal(`${sound}\n${more}`);
const rule = (settings: string): string =>
  `${signal(sound)}      rules:\n        warm: { ${settings}, consequence: C., actions: [A.] }\n`;
const band = (limits: string): string => rule(`kind: band, signal: t, priority: low, ${limits}`);

async function told(text: string): Promise<string[]> {
  const read = await readSiteText(text, 'site.yaml', async () => {
    throw new Error('there are no other files');
  });
  if (read.ok) return [];
  return read.problems.map(
    ({ line, column, path, problem, fix }) =>
      `${line}:${column} ${pathText(path)}: ${problem} | ${fix}`,
  );
}

const t = 'lines.m.s.signals.t';
const bothForms =
  'How a message is read: { kind: plain } where it is a bare number, or { kind: json, value: /v } where it is JSON with the value at /v.';

describe('payload', () => {
  test.each([
    ['plain', `10:20 ${t}.payload: "plain" is not a block of settings | ${bothForms}`],
    ['json', `10:20 ${t}.payload: "json" is not a block of settings | ${bothForms}`],
    ['/v', `10:20 ${t}.payload: "/v" is not a block of settings | ${bothForms}`],
    ['[plain]', `10:11 ${t}.payload: a list is not a block of settings | ${bothForms}`],
    [
      '{ kind: plain, value: /v }',
      `10:35 ${t}.payload.value: "value" is not known here | It belongs to another kind: take it out, or write kind: json.`,
    ],
    [
      '{ kind: json, value: v }',
      `10:41 ${t}.payload.value: "v" cannot be read | Write /v: where the value stands, as a JSON Pointer (RFC 6901): /v, /data/0/value.`,
    ],
    ['{ kind: json, value: data.v }', 'Write /data/v: where'],
    ['{ kind: json, value: "$.data[0].v" }', 'Write /data/0/v: where'],
    ['{ kind: json }', '"value" is missing | Add it. Where the value stands'],
    ['{ value: /v }', '"kind" is missing | Write one of: plain, json.'],
    ['{ kind: JSON, value: /v }', '"JSON" is not known here | Did you mean "json"?'],
    ['{ kind: json, path: /v }', '"path" is not known here | Did you mean "value"?'],
  ])('%s', async (payload, said) =>
    expect((await told(withPayload(payload))).join('\n')).toContain(said),
  );
});

const rangeForm = 'Write a list. Lowest and highest value the sensor can send, as [0 Cel, 100 Cel]';

describe('range, calibration and other settings of a signal', () => {
  test.each([
    [
      'range: [0, 100]',
      `12:19 ${t}.range.0: 0 has no unit | Write a number, a space and a UCUM unit`,
    ],
    ['range: 0-100', `12:18 ${t}.range: "0-100" is not a list | ${rangeForm}`],
    ['range: 0 to 100 Cel', `"0 to 100 Cel" is not a list | ${rangeForm}`],
    [
      'range: { low: 0 Cel, high: 9 Cel }',
      `12:11 ${t}.range: a block of settings is not a list | ${rangeForm}`,
    ],
    ['range: [0 Cel]', 'too few entries | Lowest and highest value'],
    ['range: [0 Cel, 5 Cel, 9 Cel]', 'too many entries | At most 2. Lowest and highest value'],
    ['range: [9 Cel, 0 Cel]', 'the range is empty | Write the lowest value first'],
    ['range: [0Cel, 9 Cel]', '"0Cel" cannot be read | Write "0 Cel".'],
    ['range: ["0,5 Cel", 9 Cel]', '"0,5 Cel" cannot be read | Write "0.5 Cel".'],
    ['range: [0 °C, 9 Cel]', '"°C" is no unit we take | Write "Cel"'],
    ['range: [0 [degF], "9 [degF]"]', '0 [degF] lacks its quotes | Write "0 [degF]".'],
    [
      'range: [0 bar, 9 bar]',
      '"0 bar" is a pressure, and the signal a temperature | Write it in Cel.',
    ],
    ['expect_every: 60', '60 has no unit | Write a number, a space and ms, s, min, h or d'],
    ['expect_every: 60s', '"60s" cannot be read | Write "60 s".'],
    ['expect_every: 5 minutes', '"5 minutes" cannot be read | Write "5 min".'],
    ['resolution: 0.5', '0.5 is no resolution | Write 1, 0.1, 0.01'],
    ['calibration: [32.0, 32.4]', `12:25 ${t}.calibration.0: 32 is not a list | Write a list. `],
    [
      'calibrated: 31.03.2026',
      '"31.03.2026" cannot be read | Write year, month and day, as 2026-03-31.',
    ],
    ['sensor: pt100', '"pt100" is not a block of settings | Write { kind: pt100'],
    ['interval: 60 s', '"interval" is not known here | Did you mean "expect_every"?'],
  ])('%s', async (more, said) => expect((await told(with_(more))).join('\n')).toContain(said));

  test.each([
    ['C', '"C" is no unit we take | Write "Cel".'],
    ['[degF]', '[degF] is taken for a list | Write "[degF]".'],
    ['%', 'Put the value in quotes.'],
    ['1', '1 is a number, not text | Put it in quotes: "1". The unit the sensor sends'],
  ])('unit: %s', async (unit, said) =>
    expect((await told(withUnit(unit))).join('\n')).toContain(said),
  );
});

describe('rules, names and the shape of the file', () => {
  test.each<[string, string, string]>([
    ['a limit without unit', band('high: 30'), '13:61 lines.m.s.rules.warm.high: 30 has no unit'],
    [
      'a limit by another name',
      band('max: 30 Cel'),
      '"max" is no setting of band | Did you mean "high"?',
    ],
    ['a delay', band('high: 30 Cel, on_delay: 10m'), '"10m" cannot be read | Write "10 min".'],
    [
      'actions as text',
      rule('kind: band, signal: t, high: 3 Cel, priority: low').replace('[A.]', 'A.'),
      '"A." is not a list | Write a list. The first things to do',
    ],
    [
      'no kind',
      rule('signal: t, high: 3 Cel, priority: low'),
      'has no kind, and is none this station knows | Give it a kind: band',
    ],
    [
      'a signal as text',
      signal('').replace('t:\n', 't: Cel\n'),
      `"Cel" is not a block of settings | Write its settings below it, indented: `,
    ],
    [
      'a name',
      signal(sound).replace('        t:', '        Zone_3:'),
      '"Zone_3" is no name | Write zone-3: lower case letters',
    ],
    [
      'a city alone',
      signal(sound).replace('Europe/Dublin', 'Berlin'),
      'there is no time zone "Berlin" | Did you mean "Europe/Berlin"?',
    ],
    [
      'an offset',
      signal(sound).replace('Europe/Dublin', 'GMT+1'),
      'Write an IANA name: a region and a city',
    ],
    [
      'no station',
      'site: works\ntimezone: UTC\nlines:\n  m:\n    kind: custom\n    signals: { t: 1 }\n',
      '5:5 lines.m.kind: "kind" stands where the name of a station belongs | Write the name of the station between the line and its settings, as oven-1:, and indent the rest below it.',
    ],
    [
      'signals as a list',
      'site: works\ntimezone: UTC\nlines:\n  m:\n    s:\n      kind: custom\n      signals: [t]\n',
      'a list is not a block of names | Write each with its name before a colon, without dashes.',
    ],
  ])('%s', async (_, text, said) => expect((await told(text)).join('\n')).toContain(said));

  test('a level too few is said once', async () => {
    const found = await told(
      'site: works\ntimezone: UTC\nlines:\n  m:\n    kind: custom\n    signals: { t: 1 }\n',
    );
    expect(found).toHaveLength(1);
  });
});
