/**
 * Keeps a browser from being used against the agent: 127.0.0.1 is no border for the pages in it.
 *
 * Always true: a request under a foreign host name is refused, and so is one that another site
 * caused, reading or writing, save a plain visit. There is no CORS. A request without the
 * headers only a browser sends comes from a program and passes.
 */
import type { IncomingHttpHeaders } from 'node:http';
import { AgentError } from '../errors.ts';

export const securityHeaders = {
  'content-security-policy':
    "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'cache-control': 'no-store',
} as const;

/** What the guard looks at; `rawHeaders` as node:http gives them, name and value in turn. */
export interface GuardedRequest {
  readonly method: string;
  readonly headers: IncomingHttpHeaders;
  readonly rawHeaders: readonly string[];
}

const count = (rawHeaders: readonly string[], name: string): number =>
  rawHeaders.filter((text, i) => i % 2 === 0 && text.toLowerCase() === name).length;

/** Throws WEB_REQUEST_MALFORMED, WEB_HOST_REFUSED or WEB_ORIGIN_REFUSED. */
export function guard(
  request: GuardedRequest,
  hosts: ReadonlySet<string>,
  scheme: 'http' | 'https' = 'http',
): void {
  // RFC 9112 section 3.2: none or more than one is a 400; node:http keeps the first.
  if (count(request.rawHeaders, 'host') !== 1) {
    throw new AgentError('WEB_REQUEST_MALFORMED', { reason: 'it needs one Host header' });
  }
  const host = (request.headers.host ?? '').toLowerCase();
  if (!hosts.has(host)) {
    throw new AgentError('WEB_HOST_REFUSED', { host, allowed: [...hosts].join(', ') });
  }
  const { origin } = request.headers;
  if (origin !== undefined && origin.toLowerCase() !== `${scheme}://${host}`) {
    throw new AgentError('WEB_ORIGIN_REFUSED', { from: `Origin: ${origin}` });
  }
  const site = request.headers['sec-fetch-site'];
  if (site === undefined || site === 'same-origin' || site === 'none') return;
  if (isVisit(request)) return;
  throw new AgentError('WEB_ORIGIN_REFUSED', { from: `Sec-Fetch-Site: ${String(site)}` });
}

/** Somebody followed a link here: a whole page, nothing embedded, nothing changed. */
const isVisit = ({ method, headers }: GuardedRequest): boolean =>
  method === 'GET' &&
  headers['sec-fetch-mode'] === 'navigate' &&
  headers['sec-fetch-dest'] === 'document';
