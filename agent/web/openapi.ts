/**
 * /api/openapi.json: the whole interface in OpenAPI 3.1, made from the routes and their schemas, so that
 * what is described is what answers.
 */
import { STATUS_CODES } from 'node:http';
import { z } from 'zod';
import { type ErrorCode, errorCatalogue } from '../errors.ts';
import { asideSchema, asidesSchema } from './aside-contract.ts';
import * as contract from './contract.ts';
import * as coverage from './coverage-contract.ts';
import { evidenceSchema } from './evidence-contract.ts';
import { labelSchema } from './label.ts';
import { loadSchema, neededSchema } from './load-contract.ts';
import { ownRulesFileSchema, ownRulesSchema } from './own-rules-contract.ts';
import * as people from './people-contract.ts';
import { problemStatus } from './problem.ts';
import * as push from './push-contract.ts';
import { refusedSchema, refusedTopicSchema } from './refused-contract.ts';
import type { Route, RouteAnswer } from './route.ts';
import { ruleSchema, rulesSchema } from './rule-contract.ts';
import * as runContract from './run-contract.ts';
import { ownSessionsSchema } from './session-contract.ts';
import { siteLoadedSchema, siteSchema } from './site-contract.ts';
import * as written from './written-contract.ts';

type Json = Record<string, unknown>;
type Response = { readonly description: string; readonly content: Json };

/** What any route may answer with. */
export const commonRefusals: readonly ErrorCode[] = [
  'WEB_REQUEST_MALFORMED',
  'WEB_PARAMETER_WRONG',
  'WEB_HOST_REFUSED',
  'WEB_ORIGIN_REFUSED',
  'PEOPLE_SIGN_IN_NEEDED',
  'PEOPLE_MAY_NOT',
  'PEOPLE_NOT_BY_TOKEN',
  'PEOPLE_AGAIN_NEEDED',
  'PEOPLE_FILE_BROKEN',
  'PEOPLE_FILE_FAILED',
  'WEB_FAULT',
];
/** What any route with a body may answer with besides. */
export const bodyRefusals: readonly ErrorCode[] = [
  'WEB_BODY_UNREADABLE',
  'WEB_BODY_TOO_LARGE',
  'WEB_BODY_NOT_JSON',
];

const named = {
  Health: contract.healthSchema,
  Quality: contract.qualitySchema,
  Limits: contract.limitsSchema,
  Site: siteSchema,
  SiteLoaded: siteLoadedSchema,
  OwnRulesFile: ownRulesFileSchema,
  OwnRules: ownRulesSchema,
  Performance: loadSchema,
  Needed: neededSchema,
  Signal: contract.signalSchema,
  Signals: contract.signalsSchema,
  RefusedTopic: refusedTopicSchema,
  Refused: refusedSchema,
  SeriesPoint: contract.pointSchema,
  Series: contract.seriesSchema,
  Label: labelSchema,
  Evidence: evidenceSchema,
  AlarmTransition: contract.transitionSchema,
  Alarm: contract.alarmSchema,
  Alarms: contract.alarmsSchema,
  AlarmAnswer: contract.alarmAnswerSchema,
  Hold: contract.holdSchema,
  Holds: contract.holdsSchema,
  PutAside: asideSchema,
  AllPutAside: asidesSchema,
  RunLimits: runContract.runLimitsSchema,
  Run: runContract.runSchema,
  Runs: runContract.runsSchema,
  RunProfile: runContract.runProfileSchema,
  SaidMark: written.saidMarkSchema,
  Mark: written.markSchema,
  Clock: written.clockSchema,
  Marks: written.marksSchema,
  Reading: written.readingSchema,
  Hazard: coverage.hazardSchema,
  Readiness: coverage.readinessSchema,
  WorkedOut: coverage.workedOutSchema,
  NotWorkedOut: coverage.notWorkedOutSchema,
  StationCoverage: coverage.stationCoverageSchema,
  Unheard: coverage.unheardSchema,
  Coverage: coverage.coverageSchema,
  Rule: ruleSchema,
  Rules: rulesSchema,
  SampleEvent: contract.sampleEventSchema,
  AlarmEvent: contract.alarmEventSchema,
  HoldEvent: contract.holdEventSchema,
  ResetEvent: contract.resetEventSchema,
  StreamEvent: contract.streamEventSchema,
  Me: people.meSchema,
  Person: people.personSchema,
  Invited: people.invitedSchema,
  Invitation: people.invitationSchema,
  OwnSessions: ownSessionsSchema,
  Token: people.tokenSchema,
  TokenAdded: people.tokenAddedSchema,
  PushKey: push.pushKeySchema,
  PushDevices: push.pushDevicesSchema,
  PushTest: push.pushTestSchema,
  Problem: contract.problemSchema,
} as const;

const reference = (name: string): string => `#/components/schemas/${name}`;

/** JSON Schema without the keys that mean nothing inside a document. */
function bare(schema: Json): Json {
  const { $schema: _, $id: __, ...rest } = schema;
  return rest;
}

function components(): Json {
  const registry = z.registry<{ id: string }>();
  for (const [name, schema] of Object.entries(named)) registry.add(schema, { id: name });
  // As input: answers grow by adding, so no schema may promise that there is nothing more.
  const { schemas } = z.toJSONSchema(registry, { io: 'input', uri: reference });
  return Object.fromEntries(
    Object.entries(schemas).map(([name, schema]) => [name, bare(schema as Json)]),
  );
}

const schemaOf = (schema: z.ZodType): Json => {
  const name = Object.entries(named).find(([, known]) => known === schema)?.[0];
  return name === undefined
    ? bare(z.toJSONSchema(schema, { io: 'input' }) as Json)
    : { $ref: reference(name) };
};

/** Properties of a path or query schema as parameters. */
function parameters(schema: z.ZodType, where: 'path' | 'query'): Json[] {
  const { properties = {}, required = [] } = z.toJSONSchema(schema, { io: 'input' });
  return Object.entries(properties).map(([name, property]) => {
    const { description, ...rest } = property as Json;
    return {
      name,
      in: where,
      required: required.includes(name),
      ...(description === undefined ? {} : { description }),
      schema: rest,
    };
  });
}

const answerOf = (answer: RouteAnswer): Response => ({
  description: answer.description,
  content: {
    [answer.contentType ?? 'application/json']: {
      schema: answer.schema === undefined ? { type: 'string' } : schemaOf(answer.schema),
    },
  },
});

/** Refusals by status; several codes may share one. */
function refusals(codes: readonly ErrorCode[]): Record<string, Response> {
  const byStatus = new Map<number, string[]>();
  for (const code of codes) {
    const status = problemStatus[code];
    if (status === undefined) throw new RangeError(`${code} has no HTTP status`);
    const lines = byStatus.get(status) ?? [];
    lines.push(`\`${code}\`: ${errorCatalogue[code].happened}`);
    byStatus.set(status, lines);
  }
  const content = { 'application/problem+json': { schema: { $ref: reference('Problem') } } };
  return Object.fromEntries(
    [...byStatus].map(([status, lines]) => [
      String(status),
      { description: `${STATUS_CODES[status]}. ${lines.join(' ')}`, content },
    ]),
  );
}

/** Every code a route may answer with. */
export const refusalsOf = ({ spec }: Route): ErrorCode[] => [
  ...commonRefusals,
  ...(spec.body === undefined ? [] : bodyRefusals),
  ...(spec.path instanceof z.ZodObject && Object.keys(spec.path.shape).length > 0
    ? (['WEB_ID_TOO_LONG'] as const)
    : []),
  ...(spec.stream === true ? [] : (['WEB_ANSWER_LATE'] as const)),
  ...spec.refusals,
];

function operation(route: Route): Json {
  const { spec } = route;
  const answers = Object.entries(spec.answers).map(([status, one]) => [status, answerOf(one)]);
  return {
    operationId: spec.operation,
    summary: spec.summary,
    ...(spec.description === undefined ? {} : { description: spec.description }),
    parameters: [...parameters(spec.path, 'path'), ...parameters(spec.query, 'query')],
    ...(spec.body === undefined ? {} : { requestBody: requestBody(spec.body) }),
    responses: merged(refusals(refusalsOf(route)), Object.fromEntries(answers)),
  };
}

/** Where an answer and a refusal share a status (health: 503), both contents stand under it. */
function merged(first: Record<string, Response>, second: Record<string, Response>): Json {
  const all: Record<string, Response> = { ...first };
  for (const [status, one] of Object.entries(second)) {
    const other = all[status];
    all[status] =
      other === undefined
        ? one
        : {
            description: `${one.description} ${other.description}`,
            content: { ...one.content, ...other.content },
          };
  }
  return all;
}

const requestBody = (body: z.ZodType): Json => ({
  required: !body.safeParse(undefined).success,
  content: { 'application/json': { schema: schemaOf(body) } },
});

export const pathOf = (url: string): string => url.replace(/:(\w+)/g, '{$1}');

export function openApi(routes: readonly Route[], version: string): Json {
  const paths: Record<string, Json> = {};
  for (const route of routes) {
    const path = pathOf(route.spec.url);
    paths[path] = { ...paths[path], [route.spec.method.toLowerCase()]: operation(route) };
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Forebond',
      version,
      description:
        'Times are epoch milliseconds. Ids stand URL-encoded in a path. Answers grow by adding fields only. ' +
        'Errors are problem details (RFC 9457) with a stable code and a fix.',
    },
    jsonSchemaDialect: 'https://json-schema.org/draft/2020-12/schema',
    paths,
    components: { schemas: components() },
  };
}
