/** No placeholder survives in what people read of a rule: of every station, and of the demo line. */

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readSite } from '#agent/site/read-site.ts';
import { compileSource } from '#agent/site/revision.ts';
import type { RuleView } from '#agent/web/contract.ts';
import { ruleSheetCsv } from '#agent/web/rule-sheet.ts';
import { ruleView } from '#agent/wiring/rule-view.ts';
import { placeholdersIn } from '#rules/alarm/placeholders.ts';
import type { CompiledSite } from '#rules/plan/compile.ts';
import { Line } from '../../rules/stations/scenario.ts';
import { scenarios } from '../../rules/stations/scenarios/all.ts';
import { demoSource, instances } from '../demo/recorded-day.ts';

/** The sites that come with the program. */
async function sampleSite(name: string): Promise<[string, CompiledSite]> {
  const reading = await readSite(join('docs', 'examples', name, 'site.yaml'));
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return [name, reading.compiled];
}

async function sites(): Promise<[string, CompiledSite][]> {
  const demo = compileSource(await demoSource(), instances);
  const samples = ['sample-works', 'own-rules', 'raw-sensors'].map(sampleSite);
  return [
    ...(await Promise.all(samples)),
    ...scenarios.map((scenario): [string, CompiledSite] => [
      scenario.kind,
      new Line(scenario).site,
    ]),
    ['the demo line', demo],
  ];
}

const signalOf = (plan: CompiledSite['plan']) => (id: string) =>
  plan.signals.find((signal) => signal.id === id) ?? null;

const texts = (rule: RuleView): string[] => [
  rule.summary,
  rule.consequence,
  ...rule.steps,
  ...rule.do_not,
  rule.caution ?? '',
  rule.basis,
  ...rule.needs,
];

test('every text of every rule is filled in', async () => {
  const faults: string[] = [];
  let rules = 0;
  for (const [where, { plan, rules: cards }] of await sites())
    for (const card of cards) {
      rules += 1;
      // What stands for a fact that is missing; "cause is unknown" is meant.
      for (const text of texts(ruleView(card, signalOf(plan))))
        if (/\{|\}|(?<!cause is )\bunknown\b|undefined|NaN/.test(text))
          faults.push(`${where} ${card.id}: ${text}`);
    }
  expect(rules).toBeGreaterThan(100);
  expect(faults).toEqual([]);
});

test('no placeholder survives in the rule sheet', async () => {
  for (const [where, { plan, rules: cards }] of await sites()) {
    const sheet = ruleSheetCsv(cards.map((card) => ruleView(card, signalOf(plan))));
    expect(sheet.split('\r\n').length, where).toBeGreaterThan(cards.length);
    expect(placeholdersIn(sheet), where).toEqual([]);
    expect(sheet, where).not.toMatch(/undefined|NaN/);
  }
});

test('a rule brings the same texts unfilled, with all they name, for readers with other units', async () => {
  for (const [, { plan, rules: cards }] of await sites())
    for (const card of cards) {
      const { template } = ruleView(card, signalOf(plan));
      expect(template).toBeDefined();
      const { consequence, steps, do_not, caution, facts } = template!;
      for (const text of [consequence, ...steps, ...do_not, caution])
        for (const name of placeholdersIn(text)) expect(facts).toHaveProperty(name);
    }
});
