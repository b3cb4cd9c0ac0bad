/** Fields of a site file and of a material sheet with the meanings that their schemas give. */
import { z } from 'zod/mini';
import { ruleKinds } from '#rules/kinds/all.ts';
import { sheetWritten } from '#rules/material/sheet.ts';
import { markPayloadWritten, markWritten } from '#rules/site/mark-schema.ts';
import { ruleFields } from '#rules/site/rule-schema.ts';
import { siteWritten, stationWritten } from '#rules/site/schema.ts';
import { sensorWritten } from '#rules/site/sensor-schema.ts';
import { derivedWritten, payloadWritten, signalWritten } from '#rules/site/signal-schema.ts';
import type { Word } from './words.ts';

interface Node {
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Node>>;
}

function fieldsOf(within: string, schema: z.ZodMiniType): Word[] {
  const node = z.toJSONSchema(schema, { unrepresentable: 'any', io: 'input' }) as Node;
  return wordsOf(within, node);
}

const wordsOf = (within: string, { properties = {} }: Node): Word[] =>
  Object.entries(properties).flatMap(([name, field]) => [
    { word: `${within}${name}`, meaning: field.description ?? null },
    // A block of its own fields, as fire_plan; a name for each is another schema's.
    ...wordsOf(`${within}${name}.`, field),
  ]);

export const siteFields = (): Word[] => [
  ...fieldsOf('', siteWritten),
  ...fieldsOf('station ', stationWritten),
  ...fieldsOf('signal ', signalWritten),
  ...payloadWritten.def.options.flatMap((option) =>
    fieldsOf(`payload ${option.def.shape.kind.def.values[0]} `, option),
  ),
  ...sensorWritten.def.options.flatMap((option) =>
    fieldsOf(`sensor ${option.def.shape.kind.def.values[0]} `, option),
  ),
  ...fieldsOf('mark ', markWritten),
  ...markPayloadWritten.def.options.flatMap((option) =>
    fieldsOf(`mark payload ${option.def.shape.kind.def.values[0]} `, option),
  ),
  ...fieldsOf('derived ', derivedWritten),
  ...fieldsOf('rule ', z.strictObject(ruleFields)),
  ...[...ruleKinds.values()].flatMap((kind) => fieldsOf(`${kind.name} `, kind.written)),
];

export const materialFields = (): Word[] => fieldsOf('', sheetWritten);
