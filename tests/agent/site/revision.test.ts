import { describe, expect, test } from 'vitest';
import { readSite } from '#agent/site/read-site.ts';
import {
  compileSource,
  revisionOf,
  type SiteSource,
  siteText,
  sourceOfText,
} from '#agent/site/revision.ts';

const reading = await readSite('docs/examples/sample-works/site.yaml');
if (!reading.ok) throw new Error('the sample works is broken');
const source: SiteSource = reading.source;
const id = 'mounts-1/bench/t';

/** FIPS 180-4 example: SHA-256 of "abc". */
test('the revision is SHA-256, hexadecimal', () => {
  expect(revisionOf('abc')).toBe(
    'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
  );
});

describe('the text of a revision', () => {
  test('is the same whatever the order of keys, of instances, and of empty ones', () => {
    const turned = Object.fromEntries(Object.entries(source.site).reverse()) as SiteSource['site'];
    const text = siteText(source, { [id]: ['b', 'a'] });
    expect(siteText({ ...source, site: turned }, { [id]: ['a', 'b', 'a'], x: [] })).toBe(text);
    expect(siteText(source, { [id]: ['a'] })).not.toBe(text);
  });
  test('changes with the sheet', () => {
    const materials = { 'adhesive-a': { ...source.materials['adhesive-a']!, max_rest: '3 h' } };
    expect(siteText({ ...source, materials }, {})).not.toBe(siteText(source, {}));
  });
  test('compiles to the same plan again', () => {
    const first = compileSource(source, { [id]: ['1', '2'] });
    const { source: back, instances } = sourceOfText(first.text);
    const again = compileSource(back, instances);
    expect(again.text).toBe(first.text);
    expect(again.plan.revision).toBe(revisionOf(first.text));
    expect(again.plan.revision).toBe(first.plan.revision);
    expect(again.plan.rules.map((rule) => rule.fingerprint)).toEqual(
      first.plan.rules.map((rule) => rule.fingerprint),
    );
    expect(again.plan.signals).toEqual(first.plan.signals);
    expect(again.plan.signals.map((signal) => signal.id)).toContain(`${id}-2`);
  });
  test('another text is refused', () => {
    expect(() => sourceOfText('{"site":{},"materials":{},"instances":{}}')).toThrow();
  });
});
