/** A schema as the plain JSON Schema it makes, and what of it stands at a path. */
import { z } from 'zod/mini';

export interface SchemaNode {
  readonly type?: string;
  readonly description?: string;
  readonly pattern?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly additionalProperties?: boolean | SchemaNode;
  readonly items?: SchemaNode;
  readonly prefixItems?: readonly SchemaNode[];
  readonly anyOf?: readonly SchemaNode[];
  readonly oneOf?: readonly SchemaNode[];
}
export type Path = readonly (string | number)[];

const nodes = new WeakMap<z.ZodMiniType, SchemaNode>();

/** The schema as plain JSON Schema, made once. */
export function nodeOf(schema: z.ZodMiniType): SchemaNode {
  const made = nodes.get(schema);
  if (made !== undefined) return made;
  // The one meeting of two views of JSON Schema; SchemaNode names the few members read here.
  const node = z.toJSONSchema(schema, { unrepresentable: 'any', reused: 'inline' }) as SchemaNode;
  nodes.set(schema, node);
  return node;
}

export const kindWords: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  boolean: 'true or false',
  object: 'a block of settings',
  record: 'a block of names',
  array: 'a list',
  tuple: 'a list',
  int: 'a whole number',
};

/** What may be written where a node stands. */
export function choices(node: SchemaNode): string[] {
  if (node.const !== undefined) return [String(node.const)];
  if (node.enum !== undefined) return node.enum.map(String);
  return node.type === undefined ? [] : [kindWords[node.type] ?? node.type];
}

/** The schemas that may stand at a path: several where it passes a union. */
export function schemasAt(root: SchemaNode, path: Path): readonly SchemaNode[] {
  let here = branches(root);
  for (const key of path) here = here.flatMap((node) => child(node, key)).flatMap(branches);
  return here;
}

const branches = (node: SchemaNode): SchemaNode[] => {
  const parts = [...(node.anyOf ?? []), ...(node.oneOf ?? [])];
  return parts.length === 0 ? [node] : [node, ...parts.flatMap(branches)];
};

function child(node: SchemaNode, key: string | number): SchemaNode[] {
  if (typeof key === 'number') {
    const item = node.prefixItems?.[key] ?? node.items;
    return item === undefined ? [] : [item];
  }
  const properties = node.properties ?? {};
  if (Object.hasOwn(properties, key)) return [properties[key]!];
  return typeof node.additionalProperties === 'object' ? [node.additionalProperties] : [];
}
