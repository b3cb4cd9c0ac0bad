/** docs/kinds/<kind>.md: one rule kind: what it judges, its settings, its sentence, who uses it. */

import type { RuleKind } from '#rules/kinds/kind.ts';
import { counted } from '#rules/quantity/counted.ts';
import { cell, code, table } from './markdown.ts';
import { schemaTable } from './schema-table.ts';
import { describedStations } from './stations-page.ts';

const howMany = (least: number, most: number, what: string): string =>
  least === most
    ? counted(least, what)
    : least === 0
      ? `up to ${counted(most, what)}`
      : `${least} to ${counted(most, what)}`;

/** How it names its signals. */
function takenBy(takes: RuleKind['takes']): string {
  if (takes === undefined) return 'Judges one signal, named under `signal`.';
  if (takes.most === 0) return 'Judges no signal.';
  const { least, most, units, roles = [] } = takes;
  if (units === 'same')
    return `Judges ${howMany(least, most, 'signal')} of one unit together: \`signals: [a, b, c]\`.`;
  if (units === 'any')
    return `Judges ${howMany(least, most, 'signal')} of any unit, in this order under \`signals\`: ${roles.join(', then ')}.`;
  const inOrder = units.map((unit, i) => `${roles[i]} (${code(unit)})`).join(', then ');
  return `Judges ${units.length} signals together, in this order under \`signals\`: ${inOrder}.`;
}

/** How it names its marks. */
function marksBy(marks: RuleKind['marks']): string | null {
  if (marks === undefined) return null;
  const { least, most, roles } = marks;
  return `Judges ${howMany(least, most, 'mark')}, in this order under \`marks\`: ${roles.join(', then ')}. A rule that judges a mark takes no gate.`;
}

const users = (kind: RuleKind): (readonly string[])[] =>
  describedStations.flatMap((station) =>
    station.rules
      .filter((rule) => rule.kind === kind.name)
      .map((rule) => [
        `[${code(station.name)}](../stations/${station.name}.md#${rule.name})`,
        code(rule.name),
        rule.numbers.map(({ setting, value }) => code(`${setting}: ${value ?? '…'}`)).join(' '),
        cell(rule.label.consequence.replace(/\{\$(\w+)\}/g, '‹$1›')),
      ]),
  );

export function kindPage(kind: RuleKind): string {
  const rows = users(kind);
  const parts = [
    `# ${kind.name}`,
    `${kind.summary} Made from \`rules/kinds/\` by \`npm run docs\`; edit it there.`,
    takenBy(kind.takes),
    marksBy(kind.marks),
    '## Settings',
    schemaTable(kind.written),
    '## What it says',
    `A rule that brings no sentence of its own says: “${cell(kind.sentence({}).replace(/\{\$(\w+)\}/g, '‹$1›'))}”`,
    '## Where it is used',
    rows.length === 0
      ? 'No station brings it; a rule of your own may name it.'
      : table(['station', 'rule', 'settings as it brings them', 'what it guards against'], rows),
  ];
  return `${parts.filter((part) => part !== null).join('\n\n')}\n`;
}
