/** No placeholder survives in what people read of a rule: of every station, and of the demo line. */
import { expect, test } from 'vitest';
import { compileSource } from '#agent/site/revision.ts';
import type { RuleView } from '#agent/web/contract.ts';
import { ruleView } from '#agent/wiring/rule-view.ts';
import { placeholdersIn } from '#rules/alarm/placeholders.ts';
import type { CompiledSite } from '#rules/plan/compile.ts';
import { Line } from '../../rules/stations/scenario.ts';
import { scenarios } from '../../rules/stations/scenarios/all.ts';
import { demoSource, instances } from '../demo/recorded-day.ts';

async function sites(): Promise<[string, CompiledSite][]> {
  const demo = compileSource(await demoSource(), instances);
  return [
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
