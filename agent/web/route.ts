/**
 * A route: what it takes, what it gives, what it refuses, and the handler, in one value. The server
 * registers it, openapi.ts describes it; so nothing answers that is not described.
 */
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import type { PersonId } from '#rules/input.ts';
import type { ErrorCode } from '../errors.ts';
import type { Caller } from '../people/contract.ts';
import { issueWords } from './issue-words.ts';
import { ParameterError, type WrongParameter } from './problem.ts';

export interface RouteAnswer {
  readonly description: string;
  /** The schema of a JSON answer; absent for other content. */
  readonly schema?: z.ZodType;
  readonly contentType?: string;
}

export interface RouteSpec<P extends z.ZodType, Q extends z.ZodType, B extends z.ZodType> {
  readonly method: 'GET' | 'POST' | 'DELETE';
  /** Path with `:name` for its parts. */
  readonly url: string;
  /** Name of the operation, unique. */
  readonly operation: string;
  readonly summary: string;
  readonly description?: string;
  readonly path: P;
  readonly query: Q;
  readonly body?: B;
  /** By status. */
  readonly answers: Readonly<Record<number, RouteAnswer>>;
  /** Codes of its own; those any route may answer with are in openapi.ts. */
  readonly refusals: readonly ErrorCode[];
  /** It answers with server-sent events and has no time to answer in. */
  readonly stream?: true;
}

export interface RouteInput<P, Q, B> {
  readonly path: P;
  readonly query: Q;
  readonly body: B;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
  /** Who asks; null where anybody may and nobody is signed in. */
  readonly caller: Caller | null;
  /** Their id, as the ledger and the engine know them. */
  readonly by: PersonId;
}

export interface Route {
  readonly spec: RouteSpec<z.ZodType, z.ZodType, z.ZodType>;
  readonly handle: (
    request: FastifyRequest,
    reply: FastifyReply,
    caller: Caller | null,
  ) => Promise<unknown>;
}

/** Who acts where nobody is signed in; nothing that is recorded may be done so. */
const nobody = 'nobody';

/** Binds a handler to its description; its input is parsed and typed by the schemas. */
export function route<
  P extends z.ZodType,
  Q extends z.ZodType,
  B extends z.ZodType = z.ZodUndefined,
>(
  spec: RouteSpec<P, Q, B>,
  handler: (input: RouteInput<z.output<P>, z.output<Q>, z.output<B>>) => unknown,
): Route {
  return {
    spec,
    handle: async (request, reply, caller) => {
      const wrong: WrongParameter[] = [];
      const path = parse(spec.path, request.params, 'path', wrong);
      const query = parse(spec.query, request.query, 'query', wrong);
      const body =
        spec.body === undefined ? undefined : parse(spec.body, request.body, 'body', wrong);
      if (wrong.length > 0) throw new ParameterError(wrong);
      const by = caller?.id ?? nobody;
      return handler({ path, query, body, request, reply, caller, by } as RouteInput<
        z.output<P>,
        z.output<Q>,
        z.output<B>
      >);
    },
  };
}

function parse<S extends z.ZodType>(
  schema: S,
  given: unknown,
  where: WrongParameter['in'],
  wrong: WrongParameter[],
): z.output<S> | undefined {
  const parsed = schema.safeParse(given);
  if (parsed.success) return parsed.data;
  for (const issue of parsed.error.issues) {
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys) {
        wrong.push({ in: where, name: key, problem: 'there is no such parameter' });
      }
    } else {
      const name = issue.path.length === 0 ? where : issue.path.map(String).join('/');
      wrong.push({ in: where, name, problem: issueWords(issue, valueAt(given, issue.path)) });
    }
  }
  return undefined;
}

const valueAt = (given: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (at, key) => (typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined),
    given,
  );
