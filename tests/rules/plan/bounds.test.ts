/** A site is as large as it may be, and no larger. */
import { expect, test } from 'vitest';
import { rulesMax, signalsMax } from '#rules/site/bounds.ts';
import { compiled, signalLine } from './site.ts';

const signals = (count: number, more = ''): string =>
  Array.from(
    { length: count },
    (_, i) => `s-${i}: ${signalLine(`t/${i}`, 'Cel').replace(/ }$/, `${more} }`)}`,
  ).join(', ');
const rules = (count: number): string =>
  Array.from(
    { length: count },
    (_, i) =>
      `r-${i}: { kind: band, signal: s-0, high: 30 Cel, priority: low, consequence: C., actions: [A.] }`,
  ).join(', ');

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
  const at = (count: number) =>
    compiled(
      `l: { s: { kind: custom, signals: { ${signals(1, ', expect_every: 60 s')} }, rules: { ${rules(count)} } } }`,
    );
  // lost-s-0 comes by itself.
  expect(at(rulesMax - 1).problems).toEqual([]);
  expect(at(rulesMax).problems.map(({ problem }) => problem)).toEqual([
    'the site has 10001 rules, and one agent takes 10000',
  ]);
});
