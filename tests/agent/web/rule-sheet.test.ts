/** The rule sheet as a spreadsheet reads it: every rule of every station, one a row, no cell a formula. */
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { ruleSheetCsv } from '#agent/web/rule-sheet.ts';
import { ruleView } from '#agent/wiring/rule-view.ts';
import { Line } from '../../rules/stations/scenario.ts';
import { scenarios } from '../../rules/stations/scenarios/all.ts';

const views = scenarios.flatMap((scenario) => {
  const { plan, rules } = new Line(scenario).site;
  const signalOf = (id: string) => plan.signals.find((signal) => signal.id === id) ?? null;
  return rules.map((card) => ruleView(card, signalOf));
});
const rows = parse<Record<string, string>>(ruleSheetCsv(views), { columns: true });

test('has a row for every rule, and says of each what a rationalisation must', () => {
  expect(rows.map(({ rule }) => rule)).toEqual(views.map(({ id }) => id));
  // What watches a sensor has no hazard; the rest of it every rule must say.
  for (const row of rows)
    for (const column of [
      'kind',
      'judges',
      'readiness',
      'signal word',
      'priority',
      'consequence',
      'first steps',
    ])
      expect(row[column], `${row.rule}: ${column}`).not.toBe('');
});

test('what can hurt stands before the steps', () => {
  const names = Object.keys(rows[0]!);
  const places = ['do not', 'caution', 'first steps'].map((name) => names.indexOf(name));
  expect(places.every((at) => at >= 0)).toBe(true);
  expect(places).toEqual([...places].sort((a, b) => a - b));
});

test('names each number with where it comes from', () => {
  const fast = rows.find(({ rule }) => rule === 'l/x/agitator-fast')!;
  const limits = fast['limits, delays and where each comes from']!;
  expect(limits).toContain('high = 30 /min (common practice, no published source');
  expect(fast['first steps']).toMatch(/^1 .+ 2 .+ 3 /);
  expect(fast['respond within']).toBe('10 min');
});

test('has no cell that a spreadsheet takes for a formula', () => {
  for (const row of rows)
    for (const cell of Object.values(row)) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
});
