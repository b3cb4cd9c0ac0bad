/** docs/kinds.md: rule kinds and their settings, derived signals, units, as the sources have them. */
import { z } from 'zod/mini';
import { derivedKinds } from '#rules/derive/derived.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import type { RuleKind } from '#rules/kinds/kind.ts';
import { durationText, quantityText } from '#rules/kinds/settings.ts';
import { dimensions } from '#rules/quantity/unit-table.ts';
import { cell, code, table } from './markdown.ts';

interface SchemaNode {
  readonly type?: string;
  readonly pattern?: string;
  readonly description?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly anyOf?: readonly SchemaNode[];
}

// JSON Schema has more members; these are the ones the page shows.
const nodeOf = (schema: z.ZodMiniType): SchemaNode =>
  z.toJSONSchema(schema, { unrepresentable: 'any', io: 'input' }) as SchemaNode;

const patterns: ReadonlyMap<string | undefined, string> = new Map([
  [nodeOf(quantityText).pattern, 'a value with its unit, as `7 Cel`'],
  [nodeOf(durationText).pattern, 'a duration, as `10 min`'],
]);

function written(node: SchemaNode): string {
  const known = node.pattern === undefined ? undefined : patterns.get(node.pattern);
  if (known !== undefined) return known;
  if (node.anyOf !== undefined) return node.anyOf.map(written).join(' or ');
  if (node.enum !== undefined) return node.enum.map((each) => code(String(each))).join(', ');
  if (node.const !== undefined) return code(String(node.const));
  if (node.type === 'boolean') return '`true` or `false`';
  return node.type === 'number' || node.type === 'integer' ? 'a number' : (node.type ?? 'anything');
}

function ruleKind(kind: RuleKind): string {
  const node = nodeOf(kind.written);
  const settings = Object.entries(node.properties ?? {});
  const rows = settings.map(([name, setting]) => [
    code(name),
    written(setting),
    cell(setting.description ?? ''),
  ]);
  const described = rows.some((row) => row[2] !== '');
  const head = described ? ['setting', 'written', 'meaning'] : ['setting', 'written'];
  const shown = described ? rows : rows.map((row) => row.slice(0, 2));
  return `### ${kind.name}\n\n${kind.summary}\n\n${table(head, shown)}`;
}

const derivedTable = (): string =>
  table(
    ['kind', 'gives', 'from', 'unit', 'source'],
    [...derivedKinds.values()].map((kind) => [
      code(kind.name),
      cell(kind.summary),
      kind.inputs
        .map((input) => `${code(input.name)} (${code(input.unit)}): ${cell(input.meaning)}`)
        .join('<br>'),
      code(kind.unit),
      cell(kind.source),
    ]),
  );

const unitTable = (): string =>
  table(
    ['quantity', 'judged and stored in'],
    Object.values(dimensions).map(({ words, canonical }) => [cell(words), code(canonical)]),
  );

export const kindsPage = (): string => `# Rule kinds, derived signals, units

What a site file can name. Made from \`rules/\` by \`npm run docs\`; edit it there.

## Rule kinds

${[...ruleKinds.values()].map(ruleKind).join('\n\n')}

## Derived signals

${derivedTable()}

## Units

Units are written in UCUM. Whatever a sensor sends, a quantity is judged and stored in one unit:

${unitTable()}
`;
