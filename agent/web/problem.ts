/**
 * Errors on the wire: problem details (RFC 9457) with a stable code and a fix, for every failure
 * from a malformed request line to a fault of our own.
 *
 * Always true: what a person reads comes from the catalogue in agent/errors.ts; nothing of an
 * unforeseen error leaves the process but its code.
 */
import { type IncomingMessage, type ServerResponse, STATUS_CODES } from 'node:http';
import type { FastifyReply } from 'fastify';
import { AgentError, type ErrorCode, FileError } from '../errors.ts';
import { limits } from '../limits.ts';
import type { Problem } from './contract.ts';
import { securityHeaders } from './guard.ts';

export type WrongParameter = NonNullable<Problem['parameters']>[number];

/** Every parameter that cannot be used, each named. */
export class ParameterError extends AgentError {
  readonly parameters: readonly WrongParameter[];

  constructor(parameters: readonly WrongParameter[]) {
    const names = parameters.map((one) => `${one.name} (${one.in})`).join(', ');
    super('WEB_PARAMETER_WRONG', { names });
    this.parameters = parameters;
  }
}

/** HTTP status by code; the store's refusals are 503, all others a fault. */
export const problemStatus: Partial<Record<ErrorCode, number>> = {
  WEB_HOST_REFUSED: 403,
  WEB_ORIGIN_REFUSED: 403,
  WEB_PAGE_MISSING: 404,
  WEB_ROUTE_UNKNOWN: 404,
  WEB_METHOD_UNKNOWN: 405,
  WEB_REQUEST_MALFORMED: 400,
  WEB_REQUEST_SLOW: 408,
  WEB_EXPECTATION_UNKNOWN: 417,
  WEB_HEADERS_TOO_LARGE: 431,
  WEB_ID_TOO_LONG: 414,
  WEB_BODY_TOO_LARGE: 413,
  WEB_BODY_NOT_JSON: 415,
  WEB_BODY_UNREADABLE: 400,
  WEB_PARAMETER_WRONG: 400,
  WEB_SIGNAL_UNKNOWN: 404,
  WEB_OCCURRENCE_UNKNOWN: 404,
  WEB_HOLD_UNKNOWN: 404,
  WEB_RUN_UNKNOWN: 404,
  WEB_MARK_UNKNOWN: 404,
  WEB_READING_NOT_BY_HAND: 409,
  WEB_READING_UNIT: 400,
  WEB_READING_RANGE: 400,
  WEB_READING_AHEAD: 400,
  WEB_READING_KNOWN: 409,
  WEB_READING_UNTIMED: 409,
  WEB_COMMAND_REFUSED: 409,
  TELLING_NO_WAY: 409,
  WEB_ANSWER_LATE: 503,
  WEB_STREAM_FULL: 503,
  WEB_STREAM_ONLY_EVENTS: 406,
  SITE_FILE_WRONG: 422,
  OWN_RULES_UNKNOWN: 404,
  SITE_NOT_FROM_FILE: 409,
  SITE_TOO_LARGE: 422,
  STORE_SIGNAL_CHANGED: 409,
  PEOPLE_SIGN_IN_NEEDED: 401,
  PEOPLE_SIGN_IN_WRONG: 401,
  PEOPLE_WAIT: 429,
  PEOPLE_SHUT: 403,
  PEOPLE_BUSY: 503,
  PEOPLE_MAY_NOT: 403,
  PEOPLE_NOT_BY_TOKEN: 403,
  PEOPLE_AGAIN_NEEDED: 403,
  PEOPLE_PASSWORD_SHORT: 400,
  PEOPLE_PASSWORD_LONG: 400,
  PEOPLE_PASSWORD_KNOWN: 400,
  PEOPLE_INVITATION_UNUSABLE: 404,
  PEOPLE_SETUP_ELSEWHERE: 403,
  PEOPLE_FIRST_ADMINISTRATOR: 409,
  PEOPLE_LAST_ADMINISTRATOR: 409,
  PEOPLE_NAME_TAKEN: 409,
  PEOPLE_NAME_UNUSABLE: 400,
  PEOPLE_TOO_MANY: 409,
  PEOPLE_UNKNOWN: 404,
  PEOPLE_SESSION_UNKNOWN: 404,
  TOKEN_UNKNOWN: 404,
  PEOPLE_FILE_BROKEN: 503,
  PEOPLE_FILE_FAILED: 503,
  PUSH_SUBSCRIPTION_WRONG: 400,
  PUSH_DEVICES_FULL: 409,
  PUSH_DEVICE_UNKNOWN: 404,
  WEB_FAULT: 500,
  STORE_DISK_FULL: 503,
  STORE_DAMAGED: 503,
  STORE_TAKEN_AWAY: 503,
  STORE_TWO_AGENTS: 503,
  STORE_DISK_FAILED: 503,
};

export function problemOf(error: AgentError): Problem {
  const known = problemStatus[error.code];
  if (known === undefined) return problemOf(new AgentError('WEB_FAULT', {}, error));
  return {
    type: 'about:blank',
    title: STATUS_CODES[known]!,
    status: known,
    detail: error.message,
    code: error.code,
    fix: error.fix,
    ...(error instanceof ParameterError ? { parameters: [...error.parameters] } : {}),
    ...(error instanceof FileError ? { problems: [...error.problems] } : {}),
  };
}

const seconds = (ms: number): number => ms / 1_000;

/** The web library's own errors in our words; null for one that is a fault. */
export function knownError(error: unknown, contentType: string | undefined): AgentError | null {
  if (error instanceof AgentError) return error;
  if (!(error instanceof Error)) return null;
  const code = 'code' in error ? String(error.code) : '';
  switch (code) {
    case 'FST_ERR_CTP_BODY_TOO_LARGE':
      return new AgentError('WEB_BODY_TOO_LARGE', { bytes: limits.requestBytesMax });
    case 'FST_ERR_CTP_INVALID_MEDIA_TYPE':
      return new AgentError('WEB_BODY_NOT_JSON', { type: contentType ?? 'nothing' });
    case 'FST_ERR_CTP_EMPTY_JSON_BODY':
    case 'FST_ERR_CTP_INVALID_JSON_BODY':
    case 'FST_ERR_CTP_INVALID_CONTENT_LENGTH':
      return new AgentError('WEB_BODY_UNREADABLE');
    case 'FST_ERR_BAD_URL':
      return new AgentError('WEB_REQUEST_MALFORMED', { reason: 'its path is not well-formed' });
    case 'FST_ERR_MAX_PARAM_LENGTH':
      return new AgentError('WEB_ID_TOO_LONG', { chars: limits.idCharsMax });
    case 'FST_ERR_HANDLER_TIMEOUT':
      return new AgentError('WEB_ANSWER_LATE', { seconds: seconds(limits.answerMs) });
  }
  return fromParser(error) ? new AgentError('WEB_BODY_UNREADABLE', {}, error) : null;
}

/** The JSON parser's errors carry a status and no code. */
const fromParser = (error: Error): boolean =>
  error instanceof SyntaxError && 'statusCode' in error && error.statusCode === 400;

/** Sends the problem; `headers` as Allow or Retry-After beside it. */
export function sendProblem(reply: FastifyReply, error: AgentError): FastifyReply {
  const problem = problemOf(error);
  // A 401 names a way to be known (RFC 9110 section 11.6.1); a browser asks nobody for a bearer.
  if (problem.status === 401) reply.header('www-authenticate', 'Bearer');
  return reply
    .code(problem.status)
    .headers(securityHeaders)
    .type('application/problem+json; charset=utf-8')
    .send(JSON.stringify(problem));
}

/** A problem as node:http sends it, for what never reaches the web library. */
function plainProblem(error: AgentError) {
  const { status, title, ...rest } = problemOf(error);
  const body = JSON.stringify({ ...rest, status, title });
  const headers = {
    ...securityHeaders,
    'content-type': 'application/problem+json; charset=utf-8',
    'content-length': String(Buffer.byteLength(body)),
    connection: 'close',
  };
  return { status, title, headers, body };
}

/** Answers an Expect header that is not 100-continue (RFC 9110 section 10.1.1). */
export function refuseExpectation(request: IncomingMessage, response: ServerResponse): void {
  const expected = request.headers.expect ?? '';
  const problem = plainProblem(new AgentError('WEB_EXPECTATION_UNKNOWN', { expected }));
  response.writeHead(problem.status, problem.headers).end(problem.body);
}

/** A whole HTTP/1.1 response for what never became a request (`clientError` of node:http). */
export function rawProblem(error: Error & { code?: string }): string {
  const { status, title, headers, body } = plainProblem(brokenRequest(error));
  const lines = Object.entries(headers).map(([name, text]) => `${name}: ${text}\r\n`);
  return `HTTP/1.1 ${status} ${title}\r\n${lines.join('')}\r\n${body}`;
}

function brokenRequest(error: Error & { code?: string }): AgentError {
  if (error.code === 'ERR_HTTP_REQUEST_TIMEOUT') {
    return new AgentError('WEB_REQUEST_SLOW', { seconds: seconds(limits.requestMs) });
  }
  if (error.code === 'HPE_HEADER_OVERFLOW') return new AgentError('WEB_HEADERS_TOO_LARGE');
  return new AgentError('WEB_REQUEST_MALFORMED', { reason: 'it is not HTTP/1.1' });
}
