/** Faults in the sensors of a site file: each where it stands, with the way out and nothing that follows from it. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readSite, readSiteText } from '#agent/site/read-site.ts';

const sample = 'docs/examples/raw-sensors/site.yaml';
const text = readFileSync(sample, 'utf8');

async function faults(...changes: readonly (readonly [from: string, to: string])[]) {
  let changed = text;
  for (const [from, to] of changes) {
    expect(changed).toContain(from);
    changed = changed.replace(from, to);
  }
  const read = await readSiteText(changed, 'site.yaml', () =>
    Promise.reject(new Error('no sheet')),
  );
  return read.ok
    ? []
    : read.problems.map(({ line, column, problem, fix }) => `${line}:${column} ${problem}. ${fix}`);
}

test('the example is sound', async () => expect((await readSite(sample)).ok).toBe(true));

test('a type that is none: nothing is said of rules that would judge millivolts', async () =>
  expect(await faults(['type: K', 'type: X'])).toEqual([
    '14:47 "X" is not known here. Did you mean "K"?',
  ]));

test('a cold junction that is not there, and two wires without their leads', async () =>
  expect(
    await faults(
      ['cold_junction: terminals', 'cold_junction: terminal'],
      [', lead_resistance: 0.4 Ohm', ''],
    ),
  ).toEqual([
    '14:65 this station has no signal "terminal". Did you mean "terminals"?',
    expect.stringMatching(/^21:41 two wires add .* Give lead_resistance, /),
  ]));

test('days and terms', async () =>
  expect(
    await faults(['calibrated: 2026-03-31', 'calibrated: 31.3.2026'], ['24 mo', '2 years']),
  ).toEqual([
    '24:23 "31.3.2026" cannot be read. Write year, month and day, as 2026-03-31.',
    '25:28 "2 years" cannot be read. Write days or months, as "365 d" or "12 mo".',
  ]));

test('a sensor that sends another quantity', async () =>
  expect(await faults(['unit: mA', 'unit: Cel'])).toEqual([
    expect.stringMatching(/^29:17 "Cel" is a temperature, and this sensor sends a current\. /),
  ]));
