/**
 * JSON Schema of the site file and the material sheet, for editors: names complete, meanings show.
 *
 * Made from the schemas that check the files, with what station kinds, derived kinds and rule
 * kinds know added. Committed as docs/site.schema.json and docs/material.schema.json.
 */
import { z } from 'zod/mini';
import { derivedKinds } from '#rules/derive/derived.ts';
import { settingsSchema } from '#rules/derive/derived-kind.ts';
import { ruleKinds } from '#rules/kinds/all.ts';
import type { RuleKind } from '#rules/kinds/kind.ts';
import { sheetWritten } from '#rules/material/sheet.ts';
import { markWritten } from '#rules/site/mark-schema.ts';
import { ruleWritten } from '#rules/site/rule-schema.ts';
import { siteWritten, stationWritten } from '#rules/site/schema.ts';
import { derivedWritten, signalWritten } from '#rules/site/signal-schema.ts';
import { stationKinds } from '#rules/stations/all.ts';
import type { RuleTemplate, StationKind } from '#rules/stations/station.ts';

type Json = { readonly [key: string]: unknown };

const draft = 'https://json-schema.org/draft/2020-12/schema';

const plain = (schema: z.ZodMiniType): Json => {
  const { $schema: _, ...made } = z.toJSONSchema(schema, { io: 'input' });
  return made;
};

export function siteJsonSchema(): Json {
  const site = plain(siteWritten);
  const properties = site.properties as Json;
  return {
    $schema: draft,
    ...site,
    properties: {
      ...properties,
      lines: namedBy(namedBy({ $ref: '#/$defs/station' })),
    },
    $defs: {
      station: stationSchema(),
      signal: signalSchema(),
      mark: plain(markWritten),
      derived: derivedSchema(),
      rule: ruleSchema(),
    },
    ...withoutOwnFiles({ lines: eachOf(eachOf(knownKinds())) }),
  };
}

/** Holds only where the site brings no files of its own. */
const withoutOwnFiles = (properties: Json): Json =>
  Object.fromEntries([
    ['if', { not: { required: ['extensions'] } }],
    ['then', { properties }],
  ]);

const eachOf = (value: Json): Json => ({ additionalProperties: value });

const knownKinds = (): Json => {
  const oneOf = (names: Iterable<string>): Json =>
    eachOf({ properties: { kind: { enum: [...names] } } });
  const properties = { rules: oneOf(ruleKinds.keys()), derived: oneOf(derivedKinds.keys()) };
  return { properties };
};

export const materialJsonSchema = (): Json => ({ $schema: draft, ...plain(sheetWritten) });

/** A block whose keys are names and whose values are all of one shape. */
const namedBy = (value: Json): Json => ({
  type: 'object',
  propertyNames: { pattern: '^[a-z0-9]+(-[a-z0-9]+)*$', maxLength: 48 },
  additionalProperties: value,
});

function stationSchema(): Json {
  const station = plain(stationWritten);
  const properties = station.properties as Json;
  const kinds = [...stationKinds.values()];
  return {
    ...station,
    properties: {
      ...properties,
      kind: { ...(properties.kind as Json), enum: kinds.map((kind) => kind.name) },
      signals: namedBy({ $ref: '#/$defs/signal' }),
      derived: namedBy({ $ref: '#/$defs/derived' }),
      marks: namedBy({ $ref: '#/$defs/mark' }),
      rules: namedBy({ $ref: '#/$defs/rule' }),
    },
    allOf: kinds.map((kind) =>
      whereKind(kind.name, { description: kind.summary, properties: stationNames(kind) }),
    ),
  };
}

/** Holds only where `kind` has this name. Made from entries: an object with `then` looks like a promise. */
const whereKind = (name: string, holds: Json): Json =>
  Object.fromEntries([
    ['if', { properties: { kind: { const: name } }, required: ['kind'] }],
    ['then', holds],
  ]);

const stationNames = (kind: StationKind): Json => ({
  signals: {
    properties: Object.fromEntries(
      kind.signals.map((signal) => [
        signal.name,
        { description: `${signal.meaning}; ${signal.where}` },
      ]),
    ),
  },
  rules: {
    properties: Object.fromEntries(kind.rules.map((rule) => [rule.name, templateSchema(rule)])),
  },
});

function templateSchema(rule: RuleTemplate): Json {
  const kind = ruleKinds.get(rule.kind);
  if (kind === undefined) throw new RangeError(`no rule kind "${rule.kind}"`);
  const numbers = rule.numbers.map(({ setting, value }) => `${setting} ${value ?? 'not given'}`);
  return {
    description: `${kind.summary} ${numbers.join(', ')}.`,
    properties: settingsOf(kind),
  };
}

/** Topic and payload, unless people enter it by hand. */
function signalSchema(): Json {
  return {
    ...plain(signalWritten),
    anyOf: [{ required: ['by_hand'] }, { required: ['topic', 'payload'] }],
  };
}

const settingsOf = (kind: RuleKind): Json => (plain(kind.written).properties ?? {}) as Json;

/** Which there are is known to `check`, which reads the files. */
const ownKind: Json = {
  type: 'string',
  pattern: '^[a-z][a-z0-9]*(-[a-z0-9]+)*$',
  description: 'A kind of your own, from a file under extensions.',
};

function derivedSchema(): Json {
  const derived = plain(derivedWritten);
  return {
    ...derived,
    properties: {
      ...(derived.properties as Json),
      kind: {
        anyOf: [
          ...[...derivedKinds.values()].map((kind) => ({
            const: kind.name,
            description: `${kind.summary} Inputs: ${kind.inputs.map((input) => input.name).join(', ')}.`,
          })),
          ownKind,
        ],
      },
    },
    allOf: [...derivedKinds.values()].flatMap((kind) => {
      const written = settingsSchema(kind);
      return written === null
        ? []
        : [whereKind(kind.name, { properties: plain(written).properties ?? {} })];
    }),
  };
}

function ruleSchema(): Json {
  const rule = plain(ruleWritten);
  const kinds = [...ruleKinds.values()];
  return {
    ...rule,
    properties: {
      ...(rule.properties as Json),
      kind: {
        anyOf: [...kinds.map((kind) => ({ const: kind.name, description: kind.summary })), ownKind],
      },
    },
    allOf: kinds.map((kind) => whereKind(kind.name, { properties: settingsOf(kind) })),
  };
}
