/** docs/kinds.md: rule kinds and their settings, derived signals, units, qualities, as the sources have them. */
import { derivedKinds } from '#rules/derive/derived.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import type { RuleKind } from '#rules/kinds/kind.ts';
import { type Dimension, dimensions, unitTable } from '#rules/quantity/unit-table.ts';
import { causeOf, gradeOf, quality } from '#rules/signal/quality.ts';
import { cell, code, table } from './markdown.ts';
import { schemaTable } from './schema-table.ts';

const ruleKindSections = (): string =>
  [...ruleKinds.values()]
    .map((kind) =>
      [
        `### ${kind.name}`,
        kind.summary,
        takenBy(kind.takes),
        marksBy(kind.marks),
        schemaTable(kind.written),
      ]
        .filter((part) => part !== null)
        .join('\n\n'),
    )
    .join('\n\n');

/** How it names its signals. */
function takenBy(takes: RuleKind['takes']): string | null {
  if (takes === undefined || takes.most === 0) return null;
  const { least, most, units, roles = [] } = takes;
  if (units === 'same')
    return `Judges ${least} to ${most} signals of one unit together: \`signals: [a, b, c]\`.`;
  if (units === 'any')
    return `Judges ${least} to ${most} signals of any unit, in this order under \`signals\`: ${roles.join(', then ')}.`;
  const inOrder = units.map((unit, i) => `${roles[i]} (${code(unit)})`).join(', then ');
  return `Judges ${units.length} signals together, in this order under \`signals\`: ${inOrder}.`;
}

/** How it names its marks. */
function marksBy(marks: RuleKind['marks']): string | null {
  if (marks === undefined) return null;
  const { least, most, roles } = marks;
  const count = least === most ? least : `${least} to ${most}`;
  return `Judges ${count} marks, in this order under \`marks\`: ${roles.join(', then ')}. A rule that judges a mark takes no gate.`;
}

const derivedTable = (): string =>
  table(
    ['kind', 'gives'],
    [...derivedKinds.values()].map((kind) => [
      `[${code(kind.name)}](derived.md#${kind.name})`,
      cell(kind.summary),
    ]),
  );

const unitsTable = (): string =>
  table(
    ['quantity', 'judged and stored in', 'taken'],
    (Object.keys(dimensions) as Dimension[]).map((dimension) => [
      cell(dimensions[dimension].words),
      code(dimensions[dimension].canonical),
      unitTable[dimension].map(([unit]) => code(unit)).join(' '),
    ]),
  );

const qualityTable = (): string =>
  table(
    ['code', 'grade', 'why'],
    Object.values(quality).map((each) => [String(each), gradeOf(each), cell(causeOf(each) ?? '')]),
  );

export const kindsPage = (): string => `# Rule kinds, derived signals, units, qualities

What a site file can name, and what a sample can be. Made from \`rules/\` by \`npm run docs\`; edit
it there.

## Rule kinds

${ruleKindSections()}

## Derived signals

With inputs, settings, source and range in [derived.md](derived.md).

${derivedTable()}

## Units

Units are written in UCUM. Whatever a sensor sends, a quantity is judged and stored in one unit:

${unitsTable()}

## Qualities

Good samples are judged. Uncertain ones are judged and marked, save a conflicting one, which is
kept and not judged. Bad ones carry no value: they are stored with their cause, and a rule on them
cannot judge until a usable reading comes.

${qualityTable()}
`;
