/**
 * The HTTP server: every route behind the guard, every failure a problem, every wait bounded.
 *
 * Always true: where other machines reach it, it has TLS and asks who they are; nothing is answered
 * under a foreign name or to another site; no failure of a request leaves the request.
 */
import type { AddressInfo, Socket } from 'node:net';
import { Server as TlsServer } from 'node:tls';
import { fastifySSE } from '@fastify/sse';
import {
  type FastifyInstance,
  type FastifyReply,
  type FastifyRequest,
  type FastifyServerOptions,
  fastify,
  type HTTPMethods,
} from 'fastify';
import { z } from 'zod';
import { AgentError } from '../errors.ts';
import { limits } from '../limits.ts';
import { allowedHosts, inUrl, loopbackAddress, networkAddress, shownAddress } from './address.ts';
import { guard, securityHeaders } from './guard.ts';
import { closeSoon, listen } from './listening.ts';
import { openApi } from './openapi.ts';
import { readPage, servePage } from './page.ts';
import { PeopleDoor } from './people-door.ts';
import type { PeoplePorts } from './people-ports.ts';
import type { WebPorts } from './ports.ts';
import { knownError, problemOf, rawProblem, refuseExpectation, sendProblem } from './problem.ts';
import type { PushPorts } from './push-ports.ts';
import { RequestCounts } from './request-counts.ts';
import { nothing } from './requests.ts';
import { type Route, route } from './route.ts';
import { alarmRoutes } from './routes/alarms.ts';
import { asideRoutes } from './routes/aside.ts';
import { coverageRoutes } from './routes/coverage.ts';
import { healthRoutes } from './routes/health.ts';
import { holdRoutes } from './routes/holds.ts';
import { metricsRoutes } from './routes/metrics.ts';
import { ownRulesRoutes } from './routes/own-rules.ts';
import { performanceRoutes } from './routes/performance.ts';
import { pushRoutes } from './routes/push.ts';
import { refusedRoutes } from './routes/refused.ts';
import { runRoutes } from './routes/runs.ts';
import { signalRoutes } from './routes/signals.ts';
import { siteRoutes } from './routes/site.ts';
import { streamRoutes } from './routes/stream.ts';
import { tellingRoutes } from './routes/telling.ts';
import { writtenRoutes } from './routes/written.ts';
import { Stream } from './stream.ts';
import type { TellingPorts } from './telling-ports.ts';

export interface WebOptions {
  /** A loopback address; with `people` and `tls` any of this machine's. */
  readonly host: string;
  /** 0: any free one. */
  readonly port: number;
  readonly version: string;
  readonly ports: WebPorts;
  /** Without them whoever reaches the page may do all. */
  readonly people?: PeoplePorts;
  /** Without them no phone can be called. */
  readonly push?: PushPorts;
  readonly telling?: TellingPorts;
  readonly tls?: Tls | undefined;
  /** Names under which others reach this machine, the one for links first. */
  readonly names?: readonly string[];
  /** The folder of the built page; without it, or where it is empty, `/` says that there is none. */
  readonly pageFolder?: string;
  /** A fault of the agent while it answered; the log's business. */
  readonly onFault: (error: unknown, where: string) => void;
  /** Other waits than those of agent/limits.ts. */
  readonly waits?: Partial<Waits>;
}

export interface Waits {
  readonly requestMs: number;
  readonly requestHeadersMs: number;
  readonly answerMs: number;
  readonly streamHeartbeatMs: number;
}

export interface Tls {
  /** In PEM. */
  readonly cert: string;
  readonly key: string;
}

export interface Web {
  readonly url: string;
  readonly port: number;
  /** Every route, as registered. */
  readonly routes: readonly Route[];
  /** From here on with another certificate. */
  certify(tls: Tls): void;
  /** Ends streams, lets open requests finish for 2 s, closes. */
  close(): Promise<void>;
}

/** Throws WEB_NOT_LOOPBACK or WEB_ADDRESS_UNUSABLE; else answers on `url` when it resolves. */
export async function startWeb(options: WebOptions): Promise<Web> {
  const { people, tls, names = [] } = options;
  const isOpen = people !== undefined && tls !== undefined;
  const address = isOpen ? networkAddress(options.host) : loopbackAddress(options.host);
  const scheme = tls === undefined ? 'http' : 'https';
  const waits: Waits = { ...limits, ...options.waits };
  const counts = new RequestCounts();
  const stream = new Stream(options.ports, (error) => options.onFault(error, 'stream'));
  const hosts = new Set<string>();
  const app = build(waits, tls);
  app.addHook('onRequest', async (request, reply) => {
    reply.headers(securityHeaders);
    const { method, headers, raw } = request;
    guard({ method, headers, rawHeaders: raw.rawHeaders }, hosts, scheme);
  });
  app.addHook('onResponse', async (_, reply) => counts.answer(reply.statusCode));
  answerErrors(app, counts, options.onFault);
  await app.register(fastifySSE, { heartbeatInterval: waits.streamHeartbeatMs });
  const door = new PeopleDoor(people ?? null, scheme, names);
  const routes = allRoutes(options, stream, counts, door);
  for (const one of routes) register(app, one, waits, door, options.onFault);
  refuseOtherMethods(app, routes);
  servePage(app, options.pageFolder === undefined ? null : readPage(options.pageFolder));
  app.addHook('preClose', async () => stream.close());
  await listen(app, address, options.port);
  const { port } = app.server.address() as AddressInfo;
  const schemePort = tls === undefined ? 80 : 443;
  for (const host of allowedHosts(address, port, names, schemePort)) hosts.add(host);
  door.opened(address, port);
  const url = `${scheme}://${inUrl(shownAddress(address))}:${port}`;
  const certify = (next: Tls): void => {
    if (app.server instanceof TlsServer) app.server.setSecureContext(next);
  };
  return { url, port, routes, certify, close: () => closeSoon(app) };
}

function build(waits: Waits, tls: Tls | undefined): FastifyInstance {
  const server = {
    // The guard looks at Host, and refuses in our words.
    requireHostHeader: false,
    headersTimeout: waits.requestHeadersMs,
    connectionsCheckingInterval: Math.min(1_000, waits.requestHeadersMs),
  };
  const options: FastifyServerOptions = {
    bodyLimit: limits.requestBytesMax,
    requestTimeout: waits.requestMs,
    return503OnClosing: false,
    routerOptions: { maxParamLength: limits.idCharsMax },
    clientErrorHandler: (error: Error, socket: Socket) => {
      if (socket.writable) socket.end(rawProblem(error));
      else socket.destroy();
    },
    frameworkErrors: (error: Error, request: FastifyRequest, reply: FastifyReply) => {
      const known = knownError(error, request.headers['content-type']);
      sendProblem(reply, known ?? new AgentError('WEB_FAULT', {}, error));
    },
  };
  const over = tls === undefined ? { http: server } : { https: { ...server, ...tls, ...tlsOnly } };
  const app = fastify({ ...options, ...over });
  app.server.maxConnections = limits.webConnectionsMax;
  app.server.on('checkExpectation', refuseExpectation);
  // JSON alone: a form or plain text can be posted by any page without asking.
  app.removeContentTypeParser('text/plain');
  return app;
}

/** RFC 9325 section 3.1.1: nothing older than TLS 1.2. */
const tlsOnly = { minVersion: 'TLSv1.2' } as const;

function answerErrors(
  app: FastifyInstance,
  counts: RequestCounts,
  onFault: WebOptions['onFault'],
): void {
  app.setErrorHandler((error, request, reply) => {
    // Whoever hung up in the middle of a request reads no answer; it is counted all the same.
    const brokeOff = request.raw.destroyed && !request.raw.complete;
    const known = brokeOff
      ? new AgentError('WEB_REQUEST_MALFORMED', { reason: 'it broke off' }, error)
      : knownError(error, request.headers['content-type']);
    const shown = known ?? new AgentError('WEB_FAULT', {}, error);
    const problem = problemOf(shown);
    if (problem.status === 500) onFault(error, `${request.method} ${request.routeOptions.url}`);
    counts.refuse(problem.code);
    return sendProblem(reply, shown);
  });
}

function allRoutes(
  options: WebOptions,
  stream: Stream,
  counts: RequestCounts,
  door: PeopleDoor,
): Route[] {
  const { ports } = options;
  const figures = () => [...ports.figures(), ...counts.figures(), ...stream.figures()];
  const routes = [
    ...healthRoutes(ports),
    ...siteRoutes(ports),
    ...ownRulesRoutes(ports),
    ...signalRoutes(ports),
    ...refusedRoutes(ports),
    ...alarmRoutes(ports),
    ...asideRoutes(ports),
    ...holdRoutes(ports),
    ...performanceRoutes(ports),
    ...(options.telling === undefined ? [] : tellingRoutes(options.telling)),
    ...writtenRoutes(ports),
    ...runRoutes(ports),
    ...coverageRoutes(ports),
    ...streamRoutes(stream, (caller) => door.isIn(caller)),
    ...(options.push === undefined ? [] : pushRoutes(options.push)),
    ...metricsRoutes(figures),
    ...door.routes(),
  ];
  const self = route(
    {
      method: 'GET',
      url: '/api/openapi.json',
      operation: 'describe',
      summary: 'This description.',
      path: nothing,
      query: nothing,
      answers: { 200: { description: 'OpenAPI 3.1.', schema: z.looseObject({}) } },
      refusals: [],
    },
    () => described,
  );
  const described = openApi([...routes, self], options.version);
  return [...routes, self];
}

function register(
  app: FastifyInstance,
  { spec, handle }: Route,
  waits: Waits,
  door: PeopleDoor,
  onFault: WebOptions['onFault'],
): void {
  const shared = {
    method: spec.method,
    url: spec.url,
    // Before a body is read: nobody's bytes are taken who may not send them.
    onRequest: async (request: FastifyRequest) => door.admit(spec.operation, request),
  };
  if (spec.stream !== true) {
    const handler = async (request: FastifyRequest, reply: FastifyReply): Promise<unknown> => {
      try {
        return await handle(request, reply, door.callerOf(request));
      } catch (error) {
        // Too late to tell the one who asked: the log is told.
        if (reply.sent) onFault(error, `${spec.method} ${spec.url}, after its time`);
        throw error;
      }
    };
    app.route({ ...shared, handlerTimeout: waits.answerMs, handler });
    return;
  }
  app.route({
    ...shared,
    sse: 'only',
    exposeHeadRoute: false,
    handler: (request, reply) => handle(request, reply, door.callerOf(request)),
    // The event library refuses in words of its own.
    preSerialization: async (_, reply, payload) => {
      if (reply.statusCode === 406) throw new AgentError('WEB_STREAM_ONLY_EVENTS');
      return payload;
    },
  });
}

/** 405 with Allow (RFC 9110 section 15.5.6) in place of 404 where the path exists. */
function refuseOtherMethods(app: FastifyInstance, routes: readonly Route[]): void {
  for (const [url, ofUrl] of Map.groupBy(routes, ({ spec }) => spec.url)) {
    const methods = new Set<string>(ofUrl.map(({ spec }) => spec.method));
    if (methods.has('GET') && ofUrl.every(({ spec }) => spec.stream !== true)) methods.add('HEAD');
    const allowed = [...methods].join(', ');
    const refuse = async (request: FastifyRequest, reply: FastifyReply): Promise<never> => {
      reply.header('allow', allowed);
      const path = request.url.split('?', 1)[0]!;
      throw new AgentError('WEB_METHOD_UNKNOWN', { method: request.method, path, allowed });
    };
    const method = app.supportedMethods.filter((one) => !methods.has(one)) as HTTPMethods[];
    app.route({ method, url, onRequest: refuse, handler: refuse });
  }
}
