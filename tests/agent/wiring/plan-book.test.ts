import { describe, expect, test } from 'vitest';
import { limits } from '#agent/limits.ts';
import { siteText } from '#agent/site/revision.ts';
import { PlanBook } from '#agent/wiring/plan-book.ts';
import { siteOf } from '../../rules/plan/site.ts';

const source = (lines: string) => ({
  site: { ...siteOf(lines), materials: {} },
  materials: {},
});
const wild = (rules = ''): string => `
l: { s: { kind: custom,
  signals: { t: { topic: "l/+/t", names: [cell], payload: { kind: plain }, unit: Cel } },
  rules: { ${rules} } } }`;
const nobody = { siteRevision: () => null };

describe('the values a wildcard takes', () => {
  test('make signals, up to their bound, and each makes a revision that is known', () => {
    const book = new PlanBook(source(wild()), { instances: {} }, nobody);
    const first = book.now.plan.revision;
    for (let i = 0; i < limits.wildcardInstancesMax; i += 1)
      expect(book.withInstance('l/s/t', `c${i}`, 'a topic')?.plan.signals).toHaveLength(i + 1);
    expect(book.withInstance('l/s/t', 'one-more', 'a topic')).toBeNull();
    expect(book.now.plan.signals).toHaveLength(limits.wildcardInstancesMax);
    expect(book.planOf(first).signals).toEqual([]);
    expect(book.planOf(book.now.plan.revision)).toBe(book.now.plan);
  });
  test('stop where the site would have too many rules; the site stays as it was', () => {
    const rules = Array.from(
      { length: 99 },
      (_, i) =>
        `r-${i}: { kind: band, signal: t, high: 30 Cel, priority: low, consequence: C., actions: [A.] }`,
    ).join(', ');
    const most = Math.floor(limits.rulesMax / 99);
    const known = Array.from({ length: most - 1 }, (_, i) => `c${i}`);
    const book = new PlanBook(source(wild(rules)), { instances: { 'l/s/t': known } }, nobody);
    expect(book.withInstance('l/s/t', 'the-last', 'a topic')).not.toBeNull();
    const before = book.now;
    expect(book.withInstance('l/s/t', 'one-more', 'a topic')).toBeNull();
    expect(book.withInstance('l/s/t', 'another', 'a topic')).toBeNull();
    expect(book.now).toBe(before);
    expect(before.rules).toHaveLength(most * 99);
  });
});

describe('a revision of the record', () => {
  test('is compiled from the text the store kept', () => {
    const old = source(
      'l: { s: { kind: custom, signals: { a: { topic: a, payload: { kind: plain }, unit: Cel } } } }',
    );
    const text = siteText(old, {});
    const book = new PlanBook(
      source(wild()),
      { instances: {} },
      { siteRevision: (hash) => ({ hash, firstSeq: 1, text }) },
    );
    expect(book.planOf('of-old').signals.map(({ id }) => id)).toEqual(['l/s/a']);
  });
  test('that nobody kept is an error that names it', () => {
    const book = new PlanBook(source(wild()), { instances: {} }, nobody);
    expect(() => book.planOf('gone')).toThrow('the record names a site revision gone nobody kept');
  });
});
