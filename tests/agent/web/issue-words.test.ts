/** No sentence of the schema library reaches whoever sends a request that cannot be used. */
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { issueWords } from '#agent/web/issue-words.ts';
import * as requests from '#agent/web/requests.ts';

const schemas = Object.entries<unknown>(requests).flatMap(([name, schema]) =>
  schema instanceof z.ZodType ? [[name, schema] as const] : [],
);
const atPath = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (at, key) => (typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined),
    value,
  );
const names = (schema: z.ZodType): string[] => {
  const { properties = {}, anyOf = [] } = z.toJSONSchema(schema, {
    io: 'input',
    unrepresentable: 'any',
  }) as { properties?: object; anyOf?: { properties?: object }[] };
  return [properties, ...anyOf.map((branch) => branch.properties ?? {})].flatMap(Object.keys);
};
/** How the library begins its own sentences. */
const foreign = /^(Invalid|Too (big|small)|Unrecognized|Expected|Required)/;
const nonsense = [undefined, null, 7, -1, 1.5, '', 'x', 'x'.repeat(5_000), [], ['x'], {}, true];

describe.each(schemas)('%s', (_, schema) => {
  test('refuses nonsense in our words', () => {
    const said: string[] = [];
    const tried = [
      ...nonsense,
      ...names(schema).flatMap((name) => nonsense.map((value) => ({ [name]: value }))),
    ];
    for (const value of tried) {
      const parsed = schema.safeParse(value);
      for (const issue of parsed.error?.issues ?? [])
        said.push(issueWords(issue, atPath(value, issue.path)));
    }
    expect(said.length).toBeGreaterThan(0);
    expect(said.filter((words) => foreign.test(words))).toEqual([]);
  });
});
