/** A schema's fields as a table: what people may write, and what it means. */
import { z } from 'zod/mini';
import { durationText, quantityText } from '#rules/kinds/settings.ts';
import { nameText } from '#rules/site/name.ts';
import { cell, code, table } from './markdown.ts';

interface SchemaNode {
  readonly type?: string;
  readonly title?: string;
  readonly pattern?: string;
  readonly description?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: SchemaNode | boolean;
  readonly prefixItems?: readonly SchemaNode[];
  readonly items?: SchemaNode | boolean;
  readonly anyOf?: readonly SchemaNode[];
  readonly oneOf?: readonly SchemaNode[];
}

// JSON Schema has more members; these are the ones the pages show.
const nodeOf = (schema: z.ZodMiniType): SchemaNode =>
  z.toJSONSchema(schema, { unrepresentable: 'any', io: 'input' }) as SchemaNode;

const patterns: ReadonlyMap<string, string> = new Map([
  [nodeOf(quantityText).pattern!, 'a value with its unit, as `7 Cel`'],
  [nodeOf(durationText).pattern!, 'a duration, as `10 min`'],
  [nodeOf(nameText).pattern!, 'a name'],
]);

const simpleWords: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  integer: 'a whole number',
  boolean: '`true` or `false`',
};

function listWords({ prefixItems, items }: SchemaNode): string {
  if (prefixItems !== undefined) return `[${prefixItems.map(written).join(', ')}]`;
  return typeof items === 'object' ? `a list: ${written(items)}, …` : 'a list';
}

function blockWords({ title, properties, additionalProperties }: SchemaNode): string {
  if (title !== undefined) return `a ${title} block`;
  if (properties !== undefined) {
    const fields = Object.entries(properties).map(([name, node]) => `${name}: ${written(node)}`);
    return `{ ${fields.join(', ')} }`;
  }
  if (typeof additionalProperties !== 'object') return 'a block';
  return `for each name: ${written(additionalProperties)}`;
}

/** How a person writes it. */
function written(node: SchemaNode): string {
  const known = node.pattern === undefined ? undefined : patterns.get(node.pattern);
  if (known !== undefined) return known;
  const branches = node.anyOf ?? node.oneOf;
  if (branches !== undefined) return branches.map(written).join(' or ');
  if (node.enum !== undefined) return node.enum.map((each) => code(String(each))).join(' or ');
  if (node.const !== undefined) return code(String(node.const));
  if (node.type === 'array') return listWords(node);
  if (node.type === 'object') return blockWords(node);
  return simpleWords[node.type ?? ''] ?? 'anything';
}

/** The fields of an object schema. Columns that would stand empty are left out. */
export const schemaTable = (schema: z.ZodMiniType): string => tableOf(nodeOf(schema));

/** Each titled block within it as a section of its own, in the order they are written. */
export function blockSections(schema: z.ZodMiniType, level: string): string {
  const blocks = new Map(
    within(nodeOf(schema)).flatMap((node) =>
      node.title === undefined || node.properties === undefined ? [] : [[node.title, node]],
    ),
  );
  return [...blocks]
    .map(([title, node]) => `${level} A block: ${title}\n\n${tableOf(node)}`)
    .join('\n\n');
}

/** All nodes below one. */
function within(node: SchemaNode): SchemaNode[] {
  const { properties = {}, anyOf = [], oneOf = [], items, additionalProperties: more } = node;
  const below = [
    ...Object.values(properties),
    ...anyOf,
    ...oneOf,
    ...(typeof items === 'object' ? [items] : []),
    ...(typeof more === 'object' ? [more] : []),
  ];
  return below.flatMap((each) => [each, ...within(each)]);
}

function tableOf(node: SchemaNode): string {
  const fields = Object.entries(node.properties ?? {});
  const required = node.required ?? [];
  const columns: (readonly [string, (field: readonly [string, SchemaNode]) => string])[] = [
    ['field', ([name]) => code(name)],
    ['must stand', ([name]) => (required.includes(name) ? 'yes' : '')],
    ['written', ([, field]) => written(field)],
    ['meaning', ([, field]) => cell(field.description ?? '')],
  ];
  const used = columns.filter(([, read]) => fields.some((field) => read(field) !== ''));
  return table(
    used.map(([head]) => head),
    fields.map((field) => used.map(([, read]) => read(field))),
  );
}
