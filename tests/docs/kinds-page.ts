/** docs/kinds.md: rule kinds and their settings, derived signals, units, qualities, as the sources have them. */
import { derivedKinds } from '#rules/derive/derived.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import { type Dimension, dimensions, unitTable } from '#rules/quantity/unit-table.ts';
import { causeOf, gradeOf, quality } from '#rules/signal/quality.ts';
import { cell, code, table } from './markdown.ts';

const ruleKindTable = (): string =>
  table(
    ['kind', 'judges'],
    [...ruleKinds.values()].map((kind) => [
      `[${code(kind.name)}](kinds/${kind.name}.md)`,
      cell(kind.summary),
    ]),
  );

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

Each with its settings, and the stations that use it, on a page of its own.

${ruleKindTable()}

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
