/** The JSON Schema for editors, against a validator that is not ours. */
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { materialJsonSchema, siteJsonSchema } from './json-schema.ts';

const ajv = new Ajv2020({ strict: false, allErrors: true });
const site = ajv.compile(siteJsonSchema());
const material = ajv.compile(materialJsonSchema());
const yaml = (file: string): unknown => parse(readFileSync(file, 'utf8'));

test('takes the sample works', () => {
  site(yaml('docs/examples/sample-works/site.yaml'));
  expect(site.errors).toBeNull();
  material(yaml('docs/examples/sample-works/materials/adhesive-a.yaml'));
  expect(material.errors).toBeNull();
});

test('takes kinds of a site’s own where it brings files of its own', () => {
  site(yaml('docs/examples/own-rules/site.yaml'));
  expect(site.errors).toBeNull();
});

describe('refuses', () => {
  const station = (kind: string, rest: object) => ({
    site: 's',
    timezone: 'UTC',
    lines: { l: { a: { kind, ...rest } } },
  });
  const signal = { topic: 'a', payload: { kind: 'plain' }, unit: 'Cel' };
  test.each([
    ['no time zone', { site: 's', lines: {} }],
    ['an unknown key', { ...station('custom', {}), colour: 'red' }],
    ['an unknown station kind', station('custm', {})],
    ['a name with capitals', station('custom', { signals: { T: signal } })],
    [
      'a signal without unit',
      station('custom', { signals: { t: { ...signal, unit: undefined } } }),
    ],
    ['a limit without unit', station('adhesive-store', { rules: { 'cold-adhesive': { low: 7 } } })],
    [
      'a limit of an own rule without unit',
      station('custom', { rules: { w: { kind: 'band', high: 7 } } }),
    ],
    ['an unknown rule kind', station('custom', { rules: { w: { kind: 'bnd' } } })],
    ['an unknown derived kind', station('custom', { derived: { d: { kind: 'x', inputs: {} } } })],
  ])('%s', (_, written) => {
    expect(site(JSON.parse(JSON.stringify(written)))).toBe(false);
  });
});

test('tells an editor what each signal of a station is and where its sensor belongs', () => {
  expect(JSON.stringify(siteJsonSchema())).toContain('by the coldest outer wall, near the floor');
});
