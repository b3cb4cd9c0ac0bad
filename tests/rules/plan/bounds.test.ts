/** A site is as large as it may be, and no larger. */
import { expect, test } from 'vitest';
import { rulesMax, signalsMax } from '#rules/site/bounds.ts';
import { compiled, signalLine } from './site.ts';

const signals = (count: number): string =>
  Array.from({ length: count }, (_, i) => `s-${i}: ${signalLine(`t/${i}`, 'Cel')}`).join(', ');
test(`${signalsMax} signals are taken, one more is told`, () => {
  const at = (count: number) =>
    compiled(`l: { s: { kind: custom, signals: { ${signals(count)} } } }`);
  expect(at(signalsMax).problems).toEqual([]);
  expect(at(signalsMax + 1).problems).toEqual([
    {
      path: ['lines'],
      problem: 'the site has 2001 signals, and one agent takes 2000',
      fix: 'Split it, one agent a line, each with its own site file.',
      atKey: true,
    },
  ]);
});

test(`${rulesMax} rules are taken, one more is told; those a station brings count too`, () => {
  const rules = Array.from(
    { length: 100 },
    (_, i) =>
      `r-${i}: { kind: band, signal: t, high: 30 Cel, priority: low, consequence: C., actions: [A.] }`,
  );
  const instances = Array.from({ length: 100 }, (_, i) => `c${i}`);
  const at = (more: string) =>
    compiled(
      `
l: { s: { kind: custom, rules: { ${rules.join(', ')} }, signals: {
  t: { topic: "l/+/t", names: [cell], payload: { kind: plain }, unit: Cel },
  u: { topic: u, payload: { kind: plain }, unit: Cel ${more} } } } }`,
      { 'l/s/t': instances },
    );
  expect(at('').problems).toEqual([]);
  // lost-u comes by itself.
  expect(at(', expect_every: 60 s').problems.map(({ problem }) => problem)).toEqual([
    'the site has 10001 rules, and one agent takes 10000',
  ]);
});
